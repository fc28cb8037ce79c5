// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/kit/metrics.h"

class QAction;

namespace bw {

/// Body of the type on a wall, in pixels, for a picture of this size: 26 at 1280 × 720 and at
/// 1024 × 768, more on a larger one, never less.
int wallBody(const QSize& picture);

/// The sentence of the wall, over a rule in the role's colour.
class WallSentence : public QWidget {
    Q_OBJECT

  public:
    explicit WallSentence(const QString& objectName, QWidget* parent = nullptr);
    void setText(const QString& text, Role rule = Role::Ok);
    QString text() const { return m_text->text(); }

  private:
    TextLabel* m_text;
    HairLine* m_rule;
};

/// A figure to be read from the back row: caption, big figure, unit. The figure label has the
/// object name, the unit's is that with "Unit".
class WallReadOut : public QWidget {
    Q_OBJECT

  public:
    WallReadOut(const QString& caption, const QString& objectName, QWidget* parent = nullptr);
    void set(const QString& figure, const QString& unit, Role role = Role::Ink);
    void setCaption(const QString& caption);

  private:
    void describe();
    TextLabel* m_caption;
    TextLabel* m_figure;
    TextLabel* m_unit;
};

/// Key caps with their words in as many rows as they need: what the keys do here, made from
/// actions. An action's icon text stands beside the cap; a checked one stands out. The property
/// kKeyCap is shown instead of its own key; an empty one keeps the action out.
class KeyRow : public QWidget {
    Q_OBJECT

  public:
    static constexpr auto kKeyCap = "bw.keyCap";

    explicit KeyRow(QWidget* parent = nullptr);
    void setActions(const QList<QAction*>& actions);
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Key {
        QString cap;
        QString words;
        bool isOn = false;
    };
    /// Lays them from the top left; paints if there is a painter. Returns the height.
    int lay(QPainter* painter, int width) const;
    QList<Key> m_keys;
};

}  // namespace bw
