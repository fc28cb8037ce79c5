// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <vector>

#include "ui/shell/frame_services.h"

class QButtonGroup;

namespace bw {

/// The pages on the feed line: a pipe down the left with a disc for each, under the groups' names.
/// Arrow keys walk it; folded it shows icons alone.
class Rail : public QWidget {
    Q_OBJECT

  public:
    explicit Rail(const std::vector<PageEntry>& pages, QWidget* parent = nullptr);
    void setCurrent(const QString& pageId);
    void setFolded(bool folded);
    bool isFolded() const { return m_isFolded; }

  Q_SIGNALS:
    void pageChosen(const QString& pageId);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    class Item;
    class Heading;
    QButtonGroup* m_group;
    std::vector<Item*> m_items;
    std::vector<Heading*> m_headings;
    bool m_isFolded = false;
};

}  // namespace bw
