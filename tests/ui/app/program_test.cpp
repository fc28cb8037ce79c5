// SPDX-License-Identifier: GPL-3.0-or-later
// The whole program on files of its own, as the user starts it.
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QImage>
#include <QTemporaryDir>
#include <QTest>

#include "app/app_context.h"
#include "app/page_list.h"
#include "app/pictures.h"
#include "ui/kit/messages.h"
#include "ui/kit/palette.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

CommandLine lineFor(const QTemporaryDir& folder) {
    CommandLine line;
    line.dataDir = folder.path();
    return line;
}

class Program : public testing::Test {
  protected:
    static std::unique_ptr<AppContext> start(const CommandLine& line) {
        return std::make_unique<AppContext>(line);
    }
    QTemporaryDir folder;
};

TEST_F(Program, FirstStartMakesAnEmptyFileAndTheNextOneOpensIt) {
    {
        const auto program = start(lineFor(folder));
        EXPECT_EQ(program->window().session().path(), folder.filePath(u"farm.boomwright"_s));
        EXPECT_TRUE(program->window().session().season().machines.empty());
        EXPECT_TRUE(program->window().notices().texts().isEmpty());
    }
    const auto again = start(lineFor(folder));
    EXPECT_EQ(again->window().session().path(), folder.filePath(u"farm.boomwright"_s));
}

TEST_F(Program, BadFileOnTheCommandLineIsToldAndTheUsualOneOpens) {
    QFile junk(folder.filePath(u"junk.boomwright"_s));
    ASSERT_TRUE(junk.open(QIODevice::WriteOnly));
    junk.write("nothing of ours");
    junk.close();
    CommandLine line = lineFor(folder);
    line.file = junk.fileName();
    const auto program = start(line);
    EXPECT_EQ(program->window().session().path(), folder.filePath(u"farm.boomwright"_s));
    ASSERT_EQ(program->window().notices().texts().size(), 1);
    EXPECT_FALSE(program->window().notices().texts().first().contains(u'<'));
}

TEST_F(Program, UnwritableFolderStillGivesAWindowThatSaysSo) {
    CommandLine line = lineFor(folder);
    line.dataDir = u"/proc/no-such-folder"_s;
    const auto program = start(line);
    EXPECT_TRUE(program->window().session().path().isEmpty());
    EXPECT_GE(program->window().notices().texts().size(), 2);
}

TEST_F(Program, NoTwoCommandsShareAKeyOnAnyRealPage) {
    CommandLine line = lineFor(folder);
    line.isDemo = true;
    const auto program = start(line);
    program->window().show();
    for (const QString& id : program->window().pageIds()) {
        program->window().showPage(id);
        EXPECT_EQ(keyConflicts(program->window().commands()), QStringList()) << id.toStdString();
    }
}

TEST_F(Program, PicturesShowEveryPageInBothLooksAndSizes) {
    CommandLine line = lineFor(folder);
    line.isDemo = true;
    const auto program = start(line);
    const QDir out(folder.filePath(u"pictures"_s));
    ASSERT_TRUE(drawPictures(program->window(), out.path()));
    for (const auto& page : makePageList()) {
        for (const QSize& size : {QSize(1280, 720), QSize(1920, 1080)}) {
            for (const Look look : {Look::Light, Look::Dark}) {
                const QString name =
                    u"%1-%2-%3x%4.png"_s.arg(page.id, look == Look::Light ? u"light"_s : u"dark"_s)
                        .arg(size.width())
                        .arg(size.height());
                const QImage picture(out.filePath(name));
                ASSERT_EQ(picture.size(), size) << name.toStdString();
                EXPECT_EQ(picture.pixelColor(4, size.height() - 4), color(Role::Sunken, look))
                    << name.toStdString();
            }
        }
    }
    theme().setChoice(ThemeChoice::Light);
}

}  // namespace
}  // namespace bw
