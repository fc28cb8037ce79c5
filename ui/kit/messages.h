// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QStringList>
#include <QWidget>

class QVBoxLayout;

namespace bw {

class TextLabel;

/// A caution: fill, 5 px bar, triangle, the word and the texts. Never folded, never a tool tip;
/// place it before the step it belongs to. Texts may hold a bold lead ("Stop first." in front) as
/// HTML <b>.
class CautionBox : public QWidget {
    Q_OBJECT

  public:
    explicit CautionBox(QWidget* parent = nullptr);
    /// The texts, one paragraph each, or run on in one. No texts: hides itself.
    void setTexts(const QStringList& texts, bool runOn = false);
    QString text() const;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void write();
    TextLabel* m_label;
    QStringList m_texts;
    bool m_runOn = false;
};

/// Messages in the window that stay until dismissed; the newest on top, at most four shown.
class NoticeBar : public QWidget {
    Q_OBJECT

  public:
    explicit NoticeBar(QWidget* parent = nullptr);
    void add(const QString& text, bool isError);
    void clear();
    QStringList texts() const;

  private:
    QVBoxLayout* m_rows;
};

/// An empty page: one sentence on what comes first, one button, and the way to the demo season.
class EmptyPage : public QWidget {
    Q_OBJECT

  public:
    /// `second` may be empty: no second button.
    EmptyPage(const QString& sentence, const QString& button, const QString& second = {},
              QWidget* parent = nullptr);

  Q_SIGNALS:
    void acted();
    void secondActed();
};

}  // namespace bw
