#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>

namespace sump::testing {

/// An empty folder that no other test has, removed with all it holds at the end: ctest runs each
/// case as a process of its own, several at once, so a folder of a fixed name is shared by chance.
class OwnFolder {
public:
  OwnFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "sumpwright-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for a test: " + name);
    path_ = name;
  }
  ~OwnFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }
  /// The path of a file or folder inside it, which need not exist.
  std::filesystem::path operator/(std::string_view name) const { return path_ / name; }

private:
  std::filesystem::path path_;
};

} // namespace sump::testing
