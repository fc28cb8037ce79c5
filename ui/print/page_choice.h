// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPageLayout>
#include <QString>
#include <array>

#include "core/units/unit.h"

namespace bw {

enum class Paper { A4, Letter, A5, HalfLetter };
inline constexpr std::array<Paper, 4> kPapers{Paper::A4, Paper::Letter, Paper::A5,
                                              Paper::HalfLetter};

/// What the reader prints on.
struct PageChoice {
    Paper paper = Paper::A4;
    bool isLandscape = false;
    bool operator==(const PageChoice&) const = default;
};

/// Size, orientation and margins (12 mm; 8 mm on the small papers).
QPageLayout pageLayoutOf(const PageChoice& choice);
/// "A4", "Letter", "A5", "Half letter".
QString paperName(Paper paper);
/// The usual paper of people who read these units: Letter for US, else A4.
Paper usualPaper(UnitSystem units);
/// By the name under which it is remembered ("a4", "letter", "a5", "half_letter"), else
/// `otherwise`.
Paper paperFor(const QString& key, Paper otherwise);
QString paperKey(Paper paper);

}  // namespace bw
