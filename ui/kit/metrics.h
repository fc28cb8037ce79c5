// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QLabel>

#include "ui/kit/palette.h"

namespace bw {

/// Steps of type, all from the application's font: 0.92, 1, 1.25, 1.5, 1.67, 1.4, 2.25, 2.9 of the
/// body. `Wall` is the read-out of the projector view.
enum class TextSize { Small, Body, Lead, Title, Verdict, ReadOut, Entry, Wall };

QFont textFont(TextSize size, bool bold = false);
/// Body height in pixels: 12 at the usual 9 pt.
double bodyPixels();
/// A length of the drawings, given for a body of 12 px, in pixels at the present font size.
int px(double atTwelve);

/// A label in a size and a role, that follows the theme and its type. Plain text unless told; wraps
/// on demand.
class TextLabel : public QLabel {
    Q_OBJECT

  public:
    explicit TextLabel(const QString& text = {}, TextSize size = TextSize::Body,
                       Role role = Role::Ink, bool bold = false, QWidget* parent = nullptr);
    void setRole(Role role);
    void setSize(TextSize size, bool bold);
    Role role() const { return m_role; }
    /// Breaks lines and takes the height that the text needs at the width it gets.
    TextLabel* wrapped();
    bool hasHeightForWidth() const override { return wordWrap(); }
    /// Wrapped: one line; the height that is needed comes from the width it gets. (The label's own
    /// hint is that of a column a word wide, which would make whole windows too tall.)
    QSize minimumSizeHint() const override;

  private:
    void applyRole();
    Role m_role;
    TextSize m_size;
    bool m_isBold;
};

/// A hairline across a layout, in the line role.
class HairLine : public QWidget {
    Q_OBJECT

  public:
    explicit HairLine(Qt::Orientation orientation = Qt::Horizontal, Role role = Role::Line,
                      QWidget* parent = nullptr);
    void setRole(Role role);
    void setThickness(int pixels);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Role m_role;
    Qt::Orientation m_orientation;
};

/// A plain area filled with a role's colour (rail, bars, raised panels), with optional edges.
class RolePanel : public QWidget {
    Q_OBJECT

  public:
    explicit RolePanel(Role fill, QWidget* parent = nullptr);
    void setFill(Role fill);
    /// A 1 px line in the line role along these edges.
    void setEdges(Qt::Edges edges, Role role = Role::Line);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Role m_fill;
    Role m_edgeRole = Role::Line;
    Qt::Edges m_edges;
};

}  // namespace bw
