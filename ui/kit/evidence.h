// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <QString>
#include <QVector>

#include "ui/kit/palette.h"

class QVBoxLayout;

namespace bw {

/// One row of evidence: icon, bold lead, plain text, quiet text, and a link to what can be done.
struct EvidenceRow {
    QString icon;  ///< icon name; or "origin:measured", "origin:handbook", "origin:assumed"; empty:
                   ///< none
    Role iconRole = Role::Ink;
    QString strong;
    QString text;
    QString quiet;  ///< own line unless `quietInline`
    bool quietInline = false;
    QString linkText;
    QString link;  ///< given back by linkActivated
    Role textRole = Role::Ink;
};
struct EvidenceSection {
    QString title;
    QVector<EvidenceRow> rows;
};

/// How the verdict stands: something holds, something asks for work, or neither.
enum class Tone { Ok, Limit, Plain };

/// A list of evidence sections with hairlines between (also at the foot of a page).
class EvidenceList : public QWidget {
    Q_OBJECT

  public:
    explicit EvidenceList(QWidget* parent = nullptr);
    void setSections(const QVector<EvidenceSection>& sections);

  Q_SIGNALS:
    void linkActivated(const QString& link);

  private:
    void write();
    QVector<EvidenceSection> m_sections;
    QVBoxLayout* m_rows;
};

/// The verdict sentence on the raised role with a rule below, in the tone's colour.
class VerdictPanel : public QWidget {
    Q_OBJECT

  public:
    explicit VerdictPanel(QWidget* parent = nullptr);
    void setVerdict(const QString& title, const QString& text, Tone tone);
    QString title() const;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    class TextLabel* m_title;
    class TextLabel* m_text;
    Tone m_tone = Tone::Plain;
};

/// The column of 316 px at the right: verdict, then sections, scrolling when they do not fit.
class EvidenceColumn : public QWidget {
    Q_OBJECT

  public:
    explicit EvidenceColumn(QWidget* parent = nullptr);
    void setVerdict(const QString& title, const QString& text, Tone tone);
    void setSections(const QVector<EvidenceSection>& sections);
    VerdictPanel* verdict() const { return m_verdict; }
    EvidenceList* list() const { return m_list; }
    /// Where the deeds that follow go, under the list and never scrolled away; made when first
    /// asked for.
    QVBoxLayout* foot();

  Q_SIGNALS:
    void linkActivated(const QString& link);

  private:
    VerdictPanel* m_verdict;
    EvidenceList* m_list;
    QVBoxLayout* m_column;
    QVBoxLayout* m_foot = nullptr;
};

}  // namespace bw
