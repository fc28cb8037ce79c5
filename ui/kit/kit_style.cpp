// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/kit_style.h"

#include <QApplication>
#include <QComboBox>
#include <QFontInfo>
#include <QLineEdit>
#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kCorner = 3.0;

void paintBox(QPainter& painter, const QRect& rect, const QColor& fill, const QColor& line,
              double width = 1.0) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, width));
    painter.setBrush(fill);
    const double inset = width / 2;
    painter.drawRoundedRect(QRectF(rect).adjusted(inset, inset, -inset, -inset), kCorner, kCorner);
    painter.restore();
}

bool isOn(const QStyleOption& option, QStyle::StateFlag flag) {
    return option.state & flag;
}

/// Edge of a field: the focus ring, the limit role while it shows a problem, else the edge role.
void paintField(QPainter& painter, const QStyleOption& option, const QWidget* widget) {
    const bool enabled = isOn(option, QStyle::State_Enabled);
    const bool focused = isOn(option, QStyle::State_HasFocus);
    const bool wrong = widget && widget->property("bw.problem").toBool();
    const QColor fill = color(enabled ? Role::Raised : Role::Surface);
    const QColor line = color(focused   ? Role::Focus
                              : wrong   ? Role::Limit
                              : enabled ? Role::Edge
                                        : Role::Disabled);
    paintBox(painter, option.rect, fill, line, focused ? 2.0 : 1.0);
}

void paintCheck(QPainter& painter, const QStyleOption& option) {
    const bool on = isOn(option, QStyle::State_On);
    const QColor line = color(isOn(option, QStyle::State_HasFocus)  ? Role::Focus
                              : isOn(option, QStyle::State_Enabled) ? Role::Edge
                                                                    : Role::Disabled);
    paintBox(painter, option.rect, color(on ? Role::Accent : Role::Raised),
             on ? color(Role::Accent) : line);
    if (on)
        paintIcon(painter, QRectF(option.rect).adjusted(1, 1, -1, -1), u"check"_s,
                  color(Role::OnAccent));
}

void paintRadio(QPainter& painter, const QStyleOption& option) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const bool on = isOn(option, QStyle::State_On);
    painter.setPen(QPen(color(on ? Role::Accent : Role::Edge), on ? 1.6 : 1.0));
    painter.setBrush(color(Role::Raised));
    const QRectF ring = QRectF(option.rect).adjusted(1, 1, -1, -1);
    painter.drawEllipse(ring);
    painter.setPen(Qt::NoPen);
    painter.setBrush(color(Role::Accent));
    const double inset = ring.width() * 0.27;
    if (on) painter.drawEllipse(ring.adjusted(inset, inset, -inset, -inset));
    painter.restore();
}

void paintFocusRect(QPainter& painter, const QRect& rect) {
    paintBox(painter, rect, Qt::transparent, color(Role::Focus), 2.0);
}

void paintScrollBar(QPainter& painter, const QStyleOptionSlider& option, const QStyle& style,
                    const QWidget* widget) {
    painter.save();
    painter.fillRect(option.rect, color(Role::Surface));
    QRectF grip =
        style.subControlRect(QStyle::CC_ScrollBar, &option, QStyle::SC_ScrollBarSlider, widget);
    if (option.orientation == Qt::Vertical)
        grip.adjust(3, 1, -3, -1);
    else
        grip.adjust(1, 3, -1, -3);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    const bool active = option.state & (QStyle::State_MouseOver | QStyle::State_Sunken);
    painter.setBrush(color(active ? Role::Edge : Role::Line));
    if (option.maximum > option.minimum) painter.drawRoundedRect(grip, kCorner, kCorner);
    painter.restore();
}

void paintComboBox(QPainter& painter, const QStyleOptionComboBox& option, const QWidget* widget) {
    paintField(painter, option, widget);
    const double side = px(14);
    const QRectF arrow(option.rect.right() - px(5) - side, option.rect.center().y() - side / 2 + 1,
                       side, side);
    paintIcon(painter, arrow, u"down"_s,
              color(isOn(option, QStyle::State_Enabled) ? Role::Ink : Role::Disabled));
}

}  // namespace

KitStyle::KitStyle() : QProxyStyle(QStyleFactory::create(u"Fusion"_s)) {}

void KitStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                             QPainter* painter, const QWidget* widget) const {
    switch (element) {
        case PE_PanelLineEdit: {
            const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
            const bool framed = frame && frame->lineWidth > 0;
            if (framed)
                paintField(*painter, *option, widget);
            else
                painter->fillRect(option->rect, color(Role::Raised));
            return;
        }
        case PE_FrameLineEdit:
            return;
        case PE_PanelButtonCommand:
            paintBox(*painter, option->rect,
                     color(isOn(*option, State_Sunken) || isOn(*option, State_On) ? Role::AccentTint
                                                                                  : Role::Raised),
                     color(isOn(*option, State_HasFocus)  ? Role::Focus
                           : isOn(*option, State_Enabled) ? Role::Edge
                                                          : Role::Disabled),
                     isOn(*option, State_HasFocus) ? 2.0 : 1.0);
            return;
        case PE_IndicatorCheckBox:
            paintCheck(*painter, *option);
            return;
        case PE_IndicatorRadioButton:
            paintRadio(*painter, *option);
            return;
        case PE_FrameFocusRect:
            if (!qobject_cast<const QComboBox*>(widget)) paintFocusRect(*painter, option->rect);
            return;
        case PE_FrameMenu:
            paintBox(*painter, option->rect, color(Role::Raised), color(Role::Edge));
            return;
        case PE_PanelMenu:
            painter->fillRect(option->rect, color(Role::Raised));
            return;
        case PE_PanelTipLabel:
            paintBox(*painter, option->rect, color(Role::Raised), color(Role::Edge));
            return;
        default:
            QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void KitStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                           const QWidget* widget) const {
    if (element == CE_MenuBarEmptyArea) {
        painter->fillRect(option->rect, color(Role::Sunken));
        return;
    }
    if (element == CE_MenuBarItem) {
        const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
        const bool open = isOn(*option, State_Selected);
        painter->fillRect(option->rect, color(open ? Role::AccentTint : Role::Sunken));
        painter->setPen(color(Role::Ink));
        if (item)
            painter->drawText(option->rect,
                              Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                              item->text);
        return;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void KitStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                  QPainter* painter, const QWidget* widget) const {
    if (control == CC_ComboBox) {
        if (const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option))
            return paintComboBox(*painter, *combo, widget);
    }
    if (control == CC_ScrollBar) {
        if (const auto* slider = qstyleoption_cast<const QStyleOptionSlider*>(option))
            return paintScrollBar(*painter, *slider, *proxy(), widget);
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

int KitStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                          const QWidget* widget) const {
    switch (metric) {
        case PM_ScrollBarExtent:
            return px(12);
        case PM_MenuBarPanelWidth:
            return 0;
        case PM_MenuBarItemSpacing:
            return px(2);
        case PM_MenuBarHMargin:
            return px(8);
        case PM_IndicatorWidth:
        case PM_IndicatorHeight:
        case PM_ExclusiveIndicatorWidth:
        case PM_ExclusiveIndicatorHeight:
            return px(15);
        case PM_SmallIconSize:
            return px(18);
        default:
            return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

QSize KitStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                 const QWidget* widget) const {
    QSize wanted = QProxyStyle::sizeFromContents(type, option, size, widget);
    if (type == CT_LineEdit || type == CT_ComboBox)
        wanted.setHeight(std::max(wanted.height(), px(25)));
    if (type == CT_PushButton) wanted.setHeight(std::max(wanted.height(), px(28)));
    if (type == CT_MenuBarItem) wanted.setHeight(std::max(wanted.height(), px(28)));
    if (type == CT_MenuItem) wanted.setHeight(std::max(wanted.height(), px(24)));
    return wanted;
}

int KitStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                        QStyleHintReturn* result) const {
    if (hint == SH_ScrollBar_Transient) return 0;
    if (hint == SH_DialogButtonBox_ButtonsHaveIcons) return 0;
    return QProxyStyle::styleHint(hint, option, widget, result);
}

void dressApplication(bool isFixed) {
    constexpr double kUsualPoints = 9.0;
    QApplication::setStyle(new KitStyle);
    QFont font = isFixed ? QFont(u"DejaVu Sans"_s) : QApplication::font();
    if (isFixed || font.pointSizeF() < kUsualPoints) font.setPointSizeF(kUsualPoints);
    QApplication::setFont(font);
    theme();
}

}  // namespace bw
