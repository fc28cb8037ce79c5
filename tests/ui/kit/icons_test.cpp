// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/icons.h"

#include <gtest/gtest.h>

#include <QImage>

#include "core/model/choice.h"

namespace bw {
namespace {

/// Pixels of a picture that were painted on.
int inked(const QImage& image) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) count += image.pixelColor(x, y).alpha() > 128;
    }
    return count;
}

TEST(Icons, EveryOneDrawsInItsTintAlone) {
    ASSERT_GE(iconNames().size(), 40);
    for (const QString& name : iconNames()) {
        const QImage image = iconPixmap(name, QColor(Qt::red), 48).toImage();
        EXPECT_GT(inked(image), 20) << name.toStdString();
        for (int i = 0; i < image.width() * image.height(); ++i) {
            const QColor c = image.pixelColor(i % image.width(), i / image.width());
            if (c.alpha() <= 200) continue;
            EXPECT_TRUE(c.red() > 240 && c.green() < 16) << name.toStdString();
        }
    }
}

TEST(Icons, EveryLimitHasOne) {
    for (const auto& [limit, name] : ChoiceNames<Limit>::names) {
        EXPECT_TRUE(iconNames().contains(iconOf(limit))) << name;
    }
}

}  // namespace
}  // namespace bw
