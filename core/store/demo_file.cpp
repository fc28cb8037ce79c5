// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/demo_file.h"

#include "core/exchange/demo_season.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

std::vector<RecordChange> asAdditions(const DemoSeason& demo) {
    std::vector<RecordChange> out;
    for (const auto& record : demo.customers) out.push_back(added(record));
    for (const auto& record : demo.season.machines) out.push_back(added(record));
    for (const auto& record : demo.season.nozzles) out.push_back(added(record));
    for (const auto& record : demo.season.jobs) out.push_back(added(record));
    for (const auto& record : demo.cases) out.push_back(added(record));
    for (const auto& record : demo.yard) out.push_back(added(record));
    return out;
}

Outcome fill(FarmFile& file, const DemoSeason& demo) {
    if (auto stored = file.apply(asAdditions(demo)); !stored) return stored;
    return file.setSetting(u"season.name"_s, QString::fromStdString(demo.season.name));
}

}  // namespace

Result<std::unique_ptr<FarmFile>> createDemoFarmFile(const QString& path,
                                                     const FarmFileOptions& options) {
    const auto demo = demoSeason();
    if (!demo) return demo.problem();
    auto file = FarmFile::create(path, options);
    if (!file) return file;
    if (auto filled = fill(*file.value(), *demo); !filled) return filled.problem();
    return file;
}

Result<std::unique_ptr<FarmFile>> demoFarmFileInMemory() {
    const auto demo = demoSeason();
    if (!demo) return demo.problem();
    auto file = FarmFile::inMemory();
    if (!file) return file;
    if (auto filled = fill(*file.value(), *demo); !filled) return filled.problem();
    return file;
}

}  // namespace bw
