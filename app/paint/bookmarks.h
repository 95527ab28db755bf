#pragma once
// What Qt's PDF writer does not write: bookmarks and the author.

#include "core/plan/plan.h"
#include "core/sheet/page.h"

#include <QByteArray>

#include <vector>

namespace sump {

/// The PDF with a bookmark to each page, grouped by discipline, and the project's author. `pdf`
/// must hold these pages in this order. Throws std::exception when it is no PDF.
QByteArray withBookmarks(const QByteArray& pdf, const std::vector<Page>& pages,
                         const Project& project);

} // namespace sump
