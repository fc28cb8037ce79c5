// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <memory>

#include "core/store/farm_file.h"

namespace bw {

/// Makes a farm file that holds the demo season (invented, every record marked so) and opens it.
/// Problems: those of FarmFile::create.
Result<std::unique_ptr<FarmFile>> createDemoFarmFile(const QString& path,
                                                     const FarmFileOptions& options = {});
/// The demo season in a file that lives only as long as this object.
Result<std::unique_ptr<FarmFile>> demoFarmFileInMemory();

}  // namespace bw
