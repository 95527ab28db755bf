// Saving never loses the old file. The tests may run as root, for whom permissions are no bar; so
// writes are made to fail by a limit on file size, by missing folders and by names too long.

#include "core/exchange/plan_file.h"
#include "tests/support/random_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <sstream>

namespace sump {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

class PlanFileSave : public ::testing::Test {
protected:
  void SetUp() override {
    folder_ = fs::path(::testing::TempDir()) / ("sump-save-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
    file_ = folder_ / "a plan.sump";
  }
  void TearDown() override { fs::remove_all(folder_); }

  static std::string bytesOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
  }
  std::size_t filesInFolder() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }
  static std::string errorOfSaving(const fs::path& file, std::string_view bytes) {
    try {
      writeFileAtomically(file, bytes);
    } catch (const InputError& e) {
      return e.what();
    }
    return "";
  }

  fs::path folder_;
  fs::path file_;
};

/// While it lives no file may grow past `bytes`, as on a full disk.
class FullDisk {
public:
  explicit FullDisk(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit limited{bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &limited);
  }
  ~FullDisk() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

private:
  rlimit before_{};
  void (*handler_)(int);
};

TEST_F(PlanFileSave, WhatIsSavedIsReadBack) {
  std::mt19937 rng(5);
  test::RandomPlanSize size;
  size.exact = true;
  const Plan plan = test::randomPlan(rng, size);
  savePlanFile(plan, file_);
  EXPECT_TRUE(readPlanFile(file_) == plan);
  EXPECT_EQ(bytesOf(file_), writePlanText(plan));
  EXPECT_EQ(filesInFolder(), 1U) << "no temporary file is left";
}

TEST_F(PlanFileSave, AFullDiskLeavesTheOldFile) {
  writeFileAtomically(file_, "the old plan");
  std::string error;
  {
    const FullDisk full(1'000);
    error = errorOfSaving(file_, std::string(100'000, 'x'));
  }
  EXPECT_THAT(error, HasSubstr("the old file is as it was"));
  EXPECT_EQ(bytesOf(file_), "the old plan");
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(PlanFileSave, PlacesThatCannotBeWrittenAreNamed) {
  EXPECT_THAT(errorOfSaving(folder_ / "missing" / "x.sump", "x"), HasSubstr("No such file"));
  EXPECT_THAT(errorOfSaving(folder_ / std::string(300, 'n'), "x"), HasSubstr("too long"));
  EXPECT_THAT(errorOfSaving(folder_, "x"), HasSubstr("not a regular file"));
  EXPECT_EQ(filesInFolder(), 0U);
}

TEST_F(PlanFileSave, ADeviceOrPipeIsNeverReplaced) {
  const fs::path pipe = folder_ / "pipe";
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  EXPECT_THAT(errorOfSaving(pipe, "x"), HasSubstr("not a regular file"));
  EXPECT_TRUE(fs::is_fifo(pipe));
  const fs::path link = folder_ / "link";
  fs::create_symlink("/dev/full", link);
  EXPECT_THAT(errorOfSaving(link, "x"), HasSubstr("not a regular file"));
  EXPECT_TRUE(fs::is_character_file("/dev/full"));
}

TEST_F(PlanFileSave, KeepsPermissions) {
  writeFileAtomically(file_, "old");
  fs::permissions(file_, fs::perms{0640});
  writeFileAtomically(file_, "new");
  EXPECT_EQ(fs::status(file_).permissions(), fs::perms{0640});
  EXPECT_EQ(bytesOf(file_), "new");
}

TEST_F(PlanFileSave, WritesBehindSymbolicLinks) {
  fs::create_directories(folder_ / "real");
  writeFileAtomically(folder_ / "real" / "plan.sump", "old");
  fs::create_symlink("real/plan.sump", file_);
  writeFileAtomically(file_, "new");
  EXPECT_TRUE(fs::is_symlink(file_));
  EXPECT_EQ(bytesOf(folder_ / "real" / "plan.sump"), "new");

  const fs::path dangling = folder_ / "dangling";
  fs::create_symlink("real/later.sump", dangling);
  writeFileAtomically(dangling, "later");
  EXPECT_TRUE(fs::is_symlink(dangling));
  EXPECT_EQ(bytesOf(folder_ / "real" / "later.sump"), "later");
}

TEST_F(PlanFileSave, APlanThatCouldNotBeReadAgainIsNotSaved) {
  writeFileAtomically(file_, "the old plan");
  Plan plan;
  plan.wells.append({"", "no id", {1, 2}});
  EXPECT_THROW(savePlanFile(plan, file_), InputError);
  Plan far;
  far.wells.append({"W1", "", {1e9, 2}});
  EXPECT_THROW(savePlanFile(far, file_), InputError);
  Plan broken;
  broken.wells.append({"W1", "", {NAN, 2}});
  EXPECT_THROW(savePlanFile(broken, file_), InputError);
  Plan garbled;
  garbled.wells.append({"W1", "\xff", {1, 2}});
  EXPECT_THROW(savePlanFile(garbled, file_), InputError);
  EXPECT_EQ(bytesOf(file_), "the old plan");
}

TEST_F(PlanFileSave, AFileInTheWorkingFolderNeedsNoFolderName) {
  const fs::path before = fs::current_path();
  fs::current_path(folder_);
  writeFileAtomically("here.sump", "x");
  fs::current_path(before);
  EXPECT_EQ(bytesOf(folder_ / "here.sump"), "x");
}

} // namespace
} // namespace sump
