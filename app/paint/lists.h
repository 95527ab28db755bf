#pragma once
// All lists of one review as files.

#include "core/exchange/buy_list.h"

#include <filesystem>
#include <string>
#include <vector>

namespace sump {

/// `<stem>-bill-of-materials.csv` and `.xlsx`, `<stem>-cutting-list.csv` and `.pdf`,
/// `<stem>-stake-out.csv` into the folder, told in that order. Throws InputError.
std::vector<std::filesystem::path> writeLists(const Review& review, const BuyList& buy,
                                              const std::filesystem::path& folder,
                                              const std::string& stem);

/// The shop sheet on the paper that goes with the project's units.
void writeCuttingPdf(const Review& review, const CuttingList& cutting,
                     const std::filesystem::path& file);

} // namespace sump
