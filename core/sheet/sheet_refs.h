#pragma once
// Numbers of other sheets in texts that are made before the sheets are numbered. Private to
// core/sheet.

#include "core/sheet/sheet_set.h"

#include <string>

namespace sump {

/// Marks by which a sheet is found: what begins on it.
std::string partAnchor(const std::string& part);
std::string sectionAnchor(const Plan& plan, const Id& run);
/// One detail holds for all interconnects that are alike.
std::string detailAnchor(const Plan& plan, const Study& study, const Id& run);
std::string vaultAnchor(const Plan& plan, const Id& vault);
std::string roomAnchor(const Plan& plan, const Id& room);
std::string elevationAnchor(const Plan& plan, const Id& room);
/// Of the electrician's plan of it.
std::string powerRoomAnchor(const Plan& plan, const Id& room);
/// Of the enlarged views: the rising pipes in elevation, the surroundings of the panel in plan.
std::string riserAnchor(const Plan& plan, const Id& room);
std::string panelAnchor(const Plan& plan, const Id& room);
std::string trainAnchor();
/// The site on the cover, where that shows the origin of the coordinates.
std::string originAnchor();
/// The plan that names the vaults' corners, and that of the tankage.
std::string placementAnchor();
std::string planAnchor();
/// The tables of parts and of openings.
std::string partTableAnchor();
std::string openingAnchor();
std::string circuitAnchor();
std::string baffleAnchor();

/// Of every sheet with a drawing to scale.
std::string drawingAnchor();
bool hasAnchor(const DraftPage& page, const std::string& anchor);

/// Stands for the number of the sheet with this mark, and is hardly wider than it. Of parts it is
/// the one of the same kind of sheet. A sheet that is not in the set is told as `-`.
std::string sheetOf(const std::string& anchor);

/// Stands for the number that the view with this mark has on its sheet.
std::string viewOf(const std::string& anchor);
/// `2/P-501`; `-` for a view that is not in the set.
std::string viewAndSheet(const std::string& anchor);

/// Puts the numbers of the pages and their views in.
void resolveSheets(DraftPages& pages);

} // namespace sump
