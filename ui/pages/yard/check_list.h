// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QListWidget>

namespace bw {

/// One line of the list at the left: a check with what it takes and how it stands.
struct CheckLine {
    enum class Mark { None, Done, Begun, Best };
    QString id;
    QString title;
    QString detail;  ///< "10 min · what the pump can feed"
    QString state;   ///< "done 5 Mar 2026", or why it is not one for this machine
    Mark mark = Mark::None;
    bool isHere = true;  ///< false: greyed, cannot be taken
    bool operator==(const CheckLine&) const = default;
};

/// The checks of a machine. Arrow keys walk over those that fit; the one in hand is shown at the
/// right at once.
class CheckList : public QListWidget {
    Q_OBJECT

  public:
    explicit CheckList(QWidget* parent = nullptr);
    void setLines(const QVector<CheckLine>& lines);
    void setInHand(const QString& id);
    QString inHand() const;

  Q_SIGNALS:
    void taken(const QString& id);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QVector<CheckLine> m_lines;
};

}  // namespace bw
