// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QComboBox>
#include <QPushButton>

#include "ui/kit/palette.h"

class QButtonGroup;

namespace bw {

/// The look of a key with its letter, as a hint: painted, not pressed.
void paintKeyCap(QPainter& painter, const QRectF& box, const QString& key, const QColor& line,
                 const QColor& fill);
QSizeF keyCapSize(const QString& key);

/// A button with optional icon, text and the key that does the same in a small cap. `Primary` is
/// the one deed of the page, `Flat` has no frame.
class Button : public QAbstractButton {
    Q_OBJECT

  public:
    enum class Kind { Plain, Primary, Flat };
    explicit Button(const QString& text = {}, const QString& iconName = {}, Kind kind = Kind::Plain,
                    QWidget* parent = nullptr);
    /// The shortcut, which is shown in the cap and works in the window. `acts` false: shown only.
    void setKey(const QKeySequence& key, bool acts = true);
    void setIconName(const QString& name);
    void setKind(Kind kind);
    /// 22 px high and bold, for the menu bar.
    void setCompact(bool compact);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    QString m_iconName;
    QString m_keyText;
    Kind m_kind;
    bool m_isCompact = false;
};

/// A square button with an icon alone; its text is the name for screen readers and the tool tip.
class IconButton : public Button {
    Q_OBJECT

  public:
    IconButton(const QString& name, const QString& iconName, QWidget* parent = nullptr);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString m_icon;
};

/// A row of an answer: a big key cap with its digit, the answer, and quiet words on what it means.
/// Long texts wrap; the row takes the height that they need at its width.
class AnswerRow : public QAbstractButton {
    Q_OBJECT

  public:
    AnswerRow(const QString& key, const QString& answer, const QString& meaning = {},
              QWidget* parent = nullptr);
    void setAnswer(const QString& answer, const QString& meaning);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    /// Where the answer ends and its meaning begins.
    int split(int width) const;
    QString m_key;
    QString m_meaning;
};

/// A few choices side by side, one of them taken.
class SegmentedButtons : public QWidget {
    Q_OBJECT

  public:
    explicit SegmentedButtons(QWidget* parent = nullptr);
    /// Adds a choice; returns its index.
    int addChoice(const QString& text, const QKeySequence& key = {});
    void setCurrentIndex(int index);
    int currentIndex() const;
    QAbstractButton* button(int index) const;

  Q_SIGNALS:
    void currentIndexChanged(int index);

  private:
    QButtonGroup* m_group;
};

/// A combo box that leaves the wheel to the page unless it has the focus.
class ChoiceBox : public QComboBox {
    Q_OBJECT

  public:
    explicit ChoiceBox(QWidget* parent = nullptr);
    /// Takes the item whose data equals `data`; no signal. -1 if none.
    int setCurrentData(const QVariant& data);

  protected:
    void wheelEvent(QWheelEvent* event) override;
};

/// A small quiet caption above a control, as in the header bar.
QWidget* captioned(const QString& caption, QWidget* control, QWidget* parent = nullptr);

}  // namespace bw
