// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QVBoxLayout;
class QAbstractButton;

namespace bw {

class TextLabel;

/// A group with a header that folds: chevron, bold title, quiet summary (what is in it when
/// folded).
class Section : public QWidget {
    Q_OBJECT

  public:
    explicit Section(const QString& title, QWidget* parent = nullptr);
    void setTitle(const QString& title);
    void setSummary(const QString& summary);
    void setFolded(bool folded);
    bool isFolded() const;
    /// Where the content goes.
    QVBoxLayout* body() const { return m_body; }
    QAbstractButton* header() const { return m_header; }

  Q_SIGNALS:
    void foldedChanged(bool folded);

  private:
    class Header;
    Header* headerWidget() const;
    QAbstractButton* m_header;
    QWidget* m_content;
    QVBoxLayout* m_body;
};

}  // namespace bw
