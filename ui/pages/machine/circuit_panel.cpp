// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/circuit_panel.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "core/window/advice.h"
#include "ui/kit/buttons.h"
#include "ui/kit/circuit_view.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

CircuitPanel::CircuitPanel(QWidget* parent)
    : QWidget(parent),
      m_job(new ChoiceBox),
      m_speed(new ChoiceBox),
      m_nozzle(new ChoiceBox),
      m_note(new TextLabel({}, TextSize::Small, Role::Unchecked)),
      m_view(new CircuitView) {
    build();
    connect(m_job, &QComboBox::activated, this,
            [this](int index) { Q_EMIT jobTaken(m_job->itemData(index).toLongLong()); });
    connect(m_nozzle, &QComboBox::activated, this, &CircuitPanel::nozzleTaken);
    connect(m_speed, &QComboBox::activated, this, &CircuitPanel::nozzleTaken);
    connect(m_view, &CircuitView::partTaken, this, &CircuitPanel::partTaken);
}

void CircuitPanel::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(14), px(8), px(12), 0);
    column->setSpacing(px(4));
    auto* row = new QHBoxLayout;
    row->setSpacing(px(6));
    row->addWidget(new TextLabel(tr("The circuit at"), TextSize::Body, Role::Ink, true));
    const auto place = [&](ChoiceBox* box, const char* name, const QString& words, int letters) {
        box->setObjectName(QLatin1String(name));
        box->setAccessibleName(words);
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(letters);
        row->addWidget(box, letters);
    };
    place(m_job, "machine.circuit.job", tr("Job"), 12);
    place(m_speed, "machine.circuit.speed", tr("Speed"), 9);
    place(m_nozzle, "machine.circuit.nozzle", tr("Nozzle"), 14);
    column->addLayout(row);
    m_view->setObjectName(u"machine.circuit.view"_s);
    m_note->setObjectName(u"machine.circuit.note"_s);
    column->addWidget(m_note->wrapped());
    column->addWidget(m_view);
}

void CircuitPanel::setFieldInHand(const QString& key) {
    m_view->setFieldInHand(key);
}

void CircuitPanel::present(const FormView& view, RecordId machine, RecordId job) {
    presentJobs(view, machine, job);
    const Job* inHand = view.session.job(m_job->currentData().toLongLong());
    const bool isOther = m_shownJob != m_job->currentData().toLongLong();
    m_shownJob = m_job->currentData().toLongLong();
    if (isOther) m_nozzle->clear();
    presentSpeeds(view, inHand ? *inHand : Job{});
    presentNozzles(view, inHand ? *inHand : Job{});
    m_model.reset();
    const Nozzle* nozzle = view.session.nozzleNamed(ss(m_nozzle->currentData().toString()));
    if (inHand && nozzle) {
        if (auto model = WindowModel::make(view.machine, *nozzle, *inHand))
            m_model = std::move(model).value();
    }
    m_view->setMachine(view.machine);
    presentReadings(view);
}

void CircuitPanel::presentJobs(const FormView& view, RecordId machine, RecordId job) {
    m_job->clear();
    for (const auto& stored : view.session.jobsOf(machine)) {
        m_job->addItem(QString::fromStdString(stored.job.name),
                       QVariant::fromValue<qint64>(stored.id));
    }
    m_job->setEnabled(m_job->count() > 0);
    if (m_job->count() == 0) m_job->addItem(tr("no job yet"), QVariant::fromValue<qint64>(0));
    if (m_job->setCurrentData(QVariant::fromValue<qint64>(job)) < 0) m_job->setCurrentIndex(0);
    m_job->setToolTip(m_job->currentText());
}

void CircuitPanel::presentSpeeds(const FormView& view, const Job& job) {
    const int before = std::max(0, m_speed->currentIndex());
    const bool isFirst = m_speed->count() == 0;
    m_speed->clear();
    const auto add = [&](const QString& word, const Known<Speed>& own) {
        const Known<Speed>& speed = own ? own : job.usual;
        m_speed->addItem(speed ? tr("%1, %2").arg(shown(speed->value, view.style), word) : word,
                         speed ? speed->value.si() : 0.0);
    };
    add(tr("slow"), job.slow);
    add(tr("usual"), job.usual);
    add(tr("fast"), job.fast);
    m_speed->setCurrentIndex(isFirst ? 1 : before);
    m_speed->setEnabled(job.usual.has_value());
    m_speed->setToolTip(m_speed->currentText());
}

/// The job's own nozzle first, then the sets aboard, then the user's nozzles.
void CircuitPanel::presentNozzles(const FormView& view, const Job& job) {
    const QVariant before = m_nozzle->currentData();
    QStringList names;
    const auto add = [&](const std::string& name) {
        const QString text = QString::fromStdString(name);
        if (!name.empty() && !names.contains(text) && view.session.nozzleNamed(name))
            names.append(text);
    };
    add(job.pinnedNozzle);
    for (const auto& set : view.machine.setsAboard) add(set.nozzle);
    for (const auto& stored : view.session.season().nozzles) add(stored.nozzle.name);
    m_nozzle->clear();
    for (const QString& name : names) m_nozzle->addItem(name, name);
    m_nozzle->setEnabled(!names.isEmpty());
    if (names.isEmpty()) m_nozzle->addItem(tr("no nozzle yet"), QString());
    if (!before.isValid() || m_nozzle->setCurrentData(before) < 0) m_nozzle->setCurrentIndex(0);
    m_nozzle->setToolTip(m_nozzle->currentText());
}

Speed CircuitPanel::speedTaken() const {
    return Speed::fromSi(m_speed->currentData().toDouble());
}

CircuitReadings CircuitPanel::readingsOf(const FormView& view, const LineReading& line) const {
    const auto words = [&](auto q) { return shown(q, view.style); };
    const auto known = [&](const auto& q) { return q ? words(*q) : QString(); };
    const auto lost = [&](const std::optional<Pressure>& p) {
        return p && p->si() > 0 ? u'\u2212' + words(*p) : QString();
    };
    CircuitReadings out;
    out.boomFlow = words(line.boom);
    out.sensorPressure = words(line.sensor);
    const auto point = m_model->at(speedTaken());
    out.nozzle = tr("%1 at the nozzle, %2 each").arg(words(line.nozzle), words(point.nozzleFlow));
    out.suctionLoss = lost(line.suctionLoss);
    out.pumpOutlet = known(line.pumpOutlet);
    out.pumpFlow = known(line.pump);
    if (line.agitation && line.agitation->si() > 0) out.agitation = words(*line.agitation);
    out.bypass = known(line.bypass);
    out.valveLoss = lost(line.valveLoss);
    out.lineLoss = lost(line.lineLoss);
    out.meterLoss = lost(line.plumbingLoss);
    out.restrictorLoss = lost(line.restrictorLoss);
    if (line.sectionLoss.si() > 0)
        out.sectionLoss = tr("%1 in the sections").arg(lost(line.sectionLoss));
    return out;
}

QString CircuitPanel::noteOf(const FormView& view, const LineReading& line) const {
    QStringList sentences;
    for (const auto& fact : lineFacts(*m_model, line))
        sentences.append(qs(view.session.sentences().of(fact, view.style)));
    const OperatingPoint point = m_model->at(speedTaken());
    if (line.heldBy == Limit::None) return sentences.join(u' ');
    sentences.append(
        tr("The rate is %1 here instead of %2.")
            .arg(shown(point.rate, view.style), shown(m_model->demand().rate, view.style)));
    if (const auto dose = doseFact(point.rateRatio, view.machine.units))
        sentences.append(qs(view.session.sentences().of(*dose, view.style)));
    return sentences.join(u' ');
}

/// What keeps the figures away, and nothing that is there.
QString CircuitPanel::missingText(const FormView& view) const {
    QStringList missing;
    if (nozzleCount(view.machine) <= 0) missing << tr("the nozzles a section");
    if (!view.machine.spacing) missing << tr("the nozzle spacing");
    if (m_job->currentData().toLongLong() == 0) missing << tr("a job (page Season)");
    if (m_nozzle->currentData().toString().isEmpty()) missing << tr("a nozzle (page Nozzles)");
    if (missing.isEmpty()) return tr("Machine, job and nozzle do not go together yet.");
    return tr("Flow and pressures show once it has: %1.").arg(missing.join(u", "_s));
}

void CircuitPanel::presentReadings(const FormView& view) {
    if (!m_model || !(speedTaken() > Speed{})) {
        m_note->setRole(Role::Unchecked);
        m_note->setText(missingText(view));
        m_view->setReadings({});
        return;
    }
    const LineReading line = lineAt(*m_model, speedTaken());
    m_note->setRole(line.heldBy != Limit::None ? Role::Limit
                    : line.pumpOutlet          ? Role::Quiet
                                               : Role::Unchecked);
    m_note->setText(noteOf(view, line));
    m_view->setReadings(readingsOf(view, line));
}

}  // namespace bw
