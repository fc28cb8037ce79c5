// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/droplet_editor.h"

#include <QAbstractButton>
#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/pages/season/job_cells.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// A chip that is on or off: a frame in the accent role when on.
class ChipButton : public QAbstractButton {
  public:
    ChipButton(DropletCategory category, QWidget* parent)
        : QAbstractButton(parent), m_category(category) {
        setCheckable(true);
        setFocusPolicy(Qt::NoFocus);
        setObjectName(u"season.droplets."_s + letters(category));
        setAccessibleName(letters(category));
        setToolTip(letters(category));
        setFixedSize(px(34), px(28));
    }
    DropletCategory category() const { return m_category; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        if (isChecked()) {
            painter.setPen(QPen(color(Role::Accent), 2));
            painter.setBrush(color(Role::AccentTint));
            painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 3, 3);
        }
        paintDropletChip(painter, QRectF(rect()).center(), m_category);
    }

  private:
    DropletCategory m_category;
};

/// The classes that a text names so far, unread parts left out.
std::vector<DropletCategory> classesIn(const QString& text) {
    Job job;
    setCell(job, JobColumn::Droplets, text, {});
    return job.droplets;
}

}  // namespace

DropletEditor::DropletEditor(QWidget* parent) : HangingField(parent) {
    auto* row = new QHBoxLayout(hanging());
    row->setContentsMargins(px(4), px(4), px(4), px(4));
    row->setSpacing(0);
    for (const auto& [category, name] : ChoiceNames<DropletCategory>::names) {
        auto* chip = new ChipButton(category, hanging());
        row->addWidget(chip);
        connect(chip, &QAbstractButton::clicked, this, [this, c = category] { toggle(c); });
    }
    connect(this, &QLineEdit::textChanged, this, &DropletEditor::markChips);
}

void DropletEditor::toggle(DropletCategory category) {
    Job job;
    job.droplets = classesIn(text());
    const auto at = std::find(job.droplets.begin(), job.droplets.end(), category);
    if (at == job.droplets.end())
        job.droplets.push_back(category);
    else
        job.droplets.erase(at);
    std::sort(job.droplets.begin(), job.droplets.end());
    setText(cellText(job, JobColumn::Droplets, {}));
    setModified(true);
}

void DropletEditor::markChips() {
    const auto on = classesIn(text());
    for (QObject* child : hanging()->children()) {
        if (auto* chip = dynamic_cast<ChipButton*>(child))
            chip->setChecked(std::find(on.begin(), on.end(), chip->category()) != on.end());
    }
}

}  // namespace bw
