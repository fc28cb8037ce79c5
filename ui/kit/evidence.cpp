// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/evidence.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString inRole(const QString& text, Role role, bool isSmall) {
    const QString size =
        isSmall
            ? u" style=\"font-size:%1px\""_s.arg(QFontInfo(textFont(TextSize::Small)).pixelSize())
            : QString();
    return u"<span%1><font color=\"%2\">%3</font></span>"_s.arg(size, color(role).name(),
                                                                text.toHtmlEscaped());
}

QString htmlOf(const EvidenceRow& row) {
    QStringList parts;
    if (!row.strong.isEmpty())
        parts.append(u"<b>"_s + inRole(row.strong, row.textRole, false) + u"</b>"_s);
    if (!row.text.isEmpty()) parts.append(inRole(row.text, row.textRole, false));
    QString html = parts.join(u' ');
    if (!row.quiet.isEmpty())
        html += (html.isEmpty()    ? u""_s
                 : row.quietInline ? u" "_s
                                   : u"<br/>"_s) +
                inRole(row.quiet, Role::Quiet, true);
    if (!row.linkText.isEmpty()) {
        html +=
            (html.isEmpty() ? u""_s : u" "_s) +
            u"<a href=\"%1\"><font color=\"%2\">%3</font></a>"_s.arg(
                row.link.toHtmlEscaped(), color(Role::Accent).name(), row.linkText.toHtmlEscaped());
    }
    return html;
}

}  // namespace

EvidenceList::EvidenceList(QWidget* parent) : QWidget(parent), m_rows(new QVBoxLayout(this)) {
    m_rows->setContentsMargins(px(14), px(4), px(14), px(8));
    m_rows->setSpacing(px(5));
    connect(&theme(), &Theme::changed, this, &EvidenceList::write);
}

void EvidenceList::setSections(const QVector<EvidenceSection>& sections) {
    m_sections = sections;
    write();
}

void EvidenceList::write() {
    while (auto* item = m_rows->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    bool isFirst = true;
    for (const auto& section : std::as_const(m_sections)) {
        if (!isFirst) {
            m_rows->addSpacing(px(4));
            m_rows->addWidget(new HairLine);
        }
        isFirst = false;
        auto* title = new TextLabel(section.title, TextSize::Body, Role::Ink, true);
        title->setContentsMargins(0, px(4), 0, 0);
        m_rows->addWidget(title->wrapped());
        for (const auto& row : section.rows) {
            auto* line = new QWidget;
            auto* h = new QHBoxLayout(line);
            h->setContentsMargins(0, 0, 0, 0);
            h->setSpacing(px(10));
            if (!row.icon.isEmpty())
                h->addWidget(new IconLabel(row.icon, row.iconRole, 20), 0, Qt::AlignTop);
            auto* words = new TextLabel(htmlOf(row), TextSize::Body, row.textRole);
            words->setTextFormat(Qt::RichText);
            if (!row.link.isEmpty())
                words->setTextInteractionFlags(Qt::LinksAccessibleByMouse |
                                               Qt::LinksAccessibleByKeyboard);
            connect(words, &QLabel::linkActivated, this, &EvidenceList::linkActivated);
            h->addWidget(words->wrapped(), 1);
            m_rows->addWidget(line);
        }
    }
    m_rows->addStretch(1);
}

VerdictPanel::VerdictPanel(QWidget* parent)
    : QWidget(parent),
      m_title(new TextLabel({}, TextSize::Verdict, Role::Ink, true)),
      m_text(new TextLabel) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(14), px(9), px(14), px(11));
    column->setSpacing(px(4));
    column->addWidget(m_title->wrapped());
    column->addWidget(m_text->wrapped());
    // Not Minimum: the hint is that of a narrow column, and would make the window too tall.
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void VerdictPanel::setVerdict(const QString& title, const QString& text, Tone tone) {
    m_title->setText(title);
    m_text->setText(text);
    m_text->setVisible(!text.isEmpty());
    m_tone = tone;
    setAccessibleName(title + u' ' + text);
    update();
}

QString VerdictPanel::title() const {
    return m_title->text();
}

void VerdictPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), color(Role::Raised));
    const Role rule = m_tone == Tone::Ok      ? Role::Ok
                      : m_tone == Tone::Limit ? Role::Limit
                                              : Role::Line;
    painter.fillRect(0, height() - 2, width(), 2, color(rule));
}

EvidenceColumn::EvidenceColumn(QWidget* parent)
    : QWidget(parent), m_verdict(new VerdictPanel), m_list(new EvidenceList) {
    setFixedWidth(px(316));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(new HairLine(Qt::Vertical));
    m_column = new QVBoxLayout;
    m_column->setSpacing(0);
    row->addLayout(m_column, 1);
    m_column->addWidget(m_verdict);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(m_list);
    m_column->addWidget(scroll, 1);
    connect(m_list, &EvidenceList::linkActivated, this, &EvidenceColumn::linkActivated);
}

QVBoxLayout* EvidenceColumn::foot() {
    if (m_foot) return m_foot;
    auto* panel = new RolePanel(Role::Surface);
    panel->setEdges(Qt::TopEdge);
    m_foot = new QVBoxLayout(panel);
    m_foot->setContentsMargins(px(14), px(8), px(14), px(10));
    m_foot->setSpacing(px(6));
    m_column->addWidget(panel);
    return m_foot;
}

void EvidenceColumn::setVerdict(const QString& title, const QString& text, Tone tone) {
    m_verdict->setVerdict(title, text, tone);
}
void EvidenceColumn::setSections(const QVector<EvidenceSection>& sections) {
    m_list->setSections(sections);
}

}  // namespace bw
