#pragma once
// Painting a Page: to a printer, a preview, PDF or SVG. Nothing is decided here; see core/sheet.

#include "core/plan/plan.h"
#include "core/sheet/page.h"

#include <QFont>

#include <filesystem>
#include <vector>

class QPainter;

namespace sump {

/// The bundled face, registered on first use. Needs a QGuiApplication.
QFont sheetFont(bool bold);

/// Height of its capitals in the font's own pixels.
double sheetFontCapHeight();

/// Paints the page in its own millimetres: the painter's unit must already be one millimetre, with
/// the page's top left corner at its origin.
void paintPage(QPainter& painter, const Page& page);

/// All pages in one PDF, each in its exact size, text as text with the face embedded, with
/// bookmarks, title and author. Written beside and renamed over the file. Throws InputError when it
/// cannot be written.
void writePdf(const std::vector<Page>& pages, const std::filesystem::path& file,
              const Project& project);
/// One page as SVG in millimetres, text as text. Throws InputError when it cannot be written.
void writeSvg(const Page& page, const std::filesystem::path& file);

} // namespace sump
