// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/status_line.h"

#include <QFileInfo>
#include <QHBoxLayout>

#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

bool holdsDemoData(const Season& season) {
    const auto any = [](const auto& list, auto&& isDemo) {
        return std::any_of(list.begin(), list.end(), isDemo);
    };
    return any(season.machines, [](const StoredMachine& m) { return m.machine.isDemo; }) ||
           any(season.jobs, [](const StoredJob& j) { return j.job.isDemo; });
}

QString unitsOf(const NumberStyle& style) {
    return QStringList({unitOf<Pressure>(style), unitOf<Speed>(style), unitOf<AreaRate>(style)})
        .join(u" · "_s);
}

TextLabel* quiet(const QString& name) {
    auto* label = new TextLabel({}, TextSize::Small, Role::Quiet);
    label->setObjectName(name);
    label->hide();
    return label;
}

/// A label that gives way: its text ends in an ellipsis where the row is short of room.
class GivingLabel : public TextLabel {
  public:
    explicit GivingLabel(const QString& name) : TextLabel({}, TextSize::Small, Role::Quiet) {
        setObjectName(name);
        hide();
    }
    void tellWhole(const QString& text) {
        m_whole = text;
        setToolTip(text);
        setAccessibleName(text);
        setVisible(!text.isEmpty());
        updateGeometry();
        fit();
    }
    QSize sizeHint() const override {
        return {fontMetrics().horizontalAdvance(m_whole) + px(2), TextLabel::sizeHint().height()};
    }
    QSize minimumSizeHint() const override { return {px(60), TextLabel::sizeHint().height()}; }

  protected:
    void resizeEvent(QResizeEvent* event) override {
        TextLabel::resizeEvent(event);
        fit();
    }

  private:
    void fit() { setText(fontMetrics().elidedText(m_whole, Qt::ElideRight, width())); }
    QString m_whole;
};

void tell(TextLabel& label, const QString& text) {
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

}  // namespace

StatusLine::StatusLine(QWidget* parent)
    : RolePanel(Role::Sunken, parent),
      m_file(new TextLabel({}, TextSize::Small, Role::Ink, true)),
      m_saved(quiet(u"status.saved"_s)),
      m_hint(new GivingLabel(u"status.hint"_s)),
      m_undo(new GivingLabel(u"status.undo"_s)),
      m_units(quiet(u"status.units"_s)),
      m_demo(quiet(u"status.demo"_s)) {
    setEdges(Qt::TopEdge);
    setFixedHeight(px(24));
    m_file->setObjectName(u"status.file"_s);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(px(12), 0, px(12), 0);
    row->setSpacing(px(18));
    row->addWidget(m_file);
    row->addWidget(m_saved);
    row->addStretch(1);
    auto* notARecord = quiet(u"status.record"_s);
    for (TextLabel* label : {m_hint, m_undo, m_units, m_demo, notARecord}) row->addWidget(label);
    tell(*notARecord, tr("Not a spray record"));
}

void StatusLine::setFile(const QString& path, bool isThrowAway) {
    m_file->setText(QFileInfo(path).fileName());
    m_file->setToolTip(path);
    tell(*m_saved, isThrowAway ? tr("throw-away copy") : QString());
}

void StatusLine::setSaved(const QString& timeOfDay) {
    tell(*m_saved, tr("saved %1").arg(timeOfDay));
}

void StatusLine::setHint(const QString& hint) {
    static_cast<GivingLabel*>(m_hint)->tellWhole(hint);
}

void StatusLine::follow(FarmSession& session) {
    const QUndoStack& undo = session.undoStack();
    static_cast<GivingLabel*>(m_undo)->tellWhole(
        undo.canUndo() ? tr("Ctrl+Z undoes “%1”").arg(undo.undoText()) : QString());
    tell(*m_units, unitsOf(session.currentStyle()));
    tell(*m_demo, holdsDemoData(session.season()) ? tr("Demo data") : QString());
}

}  // namespace bw
