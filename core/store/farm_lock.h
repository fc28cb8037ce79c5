// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLockFile>
#include <QString>
#include <memory>

#include "core/base/result.h"

namespace bw {

/// Holds a farm file for one program at a time, by a small file beside it. A lock left by a program
/// that is gone from this computer is taken over.
class FarmLock {
  public:
    /// Problem: file_in_use (`who`: computer and program; `lock`: the lock's own file).
    static Result<std::unique_ptr<FarmLock>> take(const QString& path);

  private:
    explicit FarmLock(const QString& lockPath) : m_file(lockPath) {}
    QLockFile m_file;
};

}  // namespace bw
