// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/machine.h"
#include "ui/kit/metrics.h"

namespace bw {

class FarmSession;

/// How far the ten questions are, and the next one as a link: ten marks, a sentence.
class QuestionStrip : public QWidget {
    Q_OBJECT

  public:
    explicit QuestionStrip(QWidget* parent = nullptr);
    void present(const FarmSession& session, const Machine& machine);

  Q_SIGNALS:
    void questionTaken(const QString& key);

  private:
    class Marks;
    Marks* m_marks;
    TextLabel* m_words;
};

}  // namespace bw
