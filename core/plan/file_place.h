#pragma once
// Where a value stands in the plan file. Consistency and the reader both name places by it.

#include <cstddef>
#include <string>
#include <string_view>

namespace sump {

/// A chain of keys and list positions up to the root. It lives on the stack while something walks
/// the plan or the file, so that a pointer is put together only when there is something to report;
/// a place must outlive those made from it.
class FilePlace {
public:
  FilePlace() = default;
  FilePlace operator/(std::string_view key) const { return {this, key, 0, false}; }
  FilePlace operator[](std::size_t index) const { return {this, {}, index, true}; }
  /// RFC 6901, `/vaults/0/width`; empty for the root.
  std::string pointer() const;

private:
  FilePlace(const FilePlace* up, std::string_view key, std::size_t index, bool inList)
      : up_(up), key_(key), index_(index), inList_(inList) {}

  const FilePlace* up_ = nullptr;
  std::string_view key_;
  std::size_t index_ = 0;
  bool inList_ = false;
};

/// One step of an RFC 6901 pointer: `~` and `/` escaped.
std::string pointerStep(std::string_view key);

} // namespace sump
