// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace bw {

class MainWindow;

/// Draws every page, light and dark, at 1280×720 and 1920×1080, into
/// `<folder>/<page>-<look>-<width>x<height>.png`. False if one could not be written.
bool drawPictures(MainWindow& window, const QString& folder);
/// Shows every page once, for the check of an installation.
void visitPages(MainWindow& window);

}  // namespace bw
