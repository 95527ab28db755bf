#pragma once
// What the parts of the bill share. Private to core/study.

#include "core/study/bill.h"

namespace sump {

struct BillContext {
  const Plan& plan;
  const Study& study;
  const Catalog& catalog;
  const Supplies& supplies;
  const CuttingList& cutting;
};

/// Adds lines; equal ones become one with the shares joined.
class BillMaker {
public:
  explicit BillMaker(const BillContext& context) : context_(context) {}
  const BillContext& context() const { return context_; }
  /// The line with this key, size, material and trade; a new one takes all else from `like`.
  BillLine& line(const BillLine& like);
  /// Adds to a line's net amount.
  static void add(BillLine& line, const Id& from, double amount);
  void note(std::string text) { bill_.notes.push_back(std::move(text)); }
  Bill finish();

private:
  const BillContext& context_;
  Bill bill_;
};

BillLine billLine(std::string_view trade, std::string category, std::string key,
                  std::string description, std::string size = {}, BillUnit unit = BillUnit::Each);

void addPipeAndParts(BillMaker& maker);
void addJoints(BillMaker& maker);
void addElectrical(BillMaker& maker);
void addSupports(BillMaker& maker);
void addMarking(BillMaker& maker);
void addEarthwork(BillMaker& maker);

} // namespace sump
