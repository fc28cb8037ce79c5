// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/header_choice.h"

#include <QHBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"

namespace bw {

ChoiceBox* addHeaderChoice(QHBoxLayout& row, const QString& objectName, const QString& caption,
                           int width) {
    auto* box = new ChoiceBox;
    box->setObjectName(objectName);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    box->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    QWidget* whole = captioned(caption, box);
    whole->setMaximumWidth(px(width));
    row.addWidget(whole, width);
    return box;
}

}  // namespace bw
