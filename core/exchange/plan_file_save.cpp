// Files: reading whole, and replacing without ever losing the old one.

#include "core/exchange/plan_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstring>

namespace sump {

namespace {

namespace fs = std::filesystem;

/// As json_document.h bounds a text; a file is read no further than this.
constexpr std::size_t kLargestFile = std::size_t{64} << 20;

std::string reason(int error) {
  return std::strerror(error); // NOLINT(concurrency-mt-unsafe): glibc's is safe for known numbers
}

std::string mendOf(int error) {
  switch (error) {
  case ENOSPC:
  case EFBIG:
  case EDQUOT:
    return "make room and save again; the old file is as it was";
  case ENOENT:
  case ENOTDIR:
    return "choose a folder that exists";
  default:
    return "choose another folder or name, or change the permissions";
  }
}

[[noreturn]] void fail(const fs::path& file, const std::string& what, int error) {
  throw InputError(file.string(), "", 0, what + ": " + reason(error), mendOf(error));
}

/// Owns a file descriptor.
class Descriptor {
public:
  explicit Descriptor(int fd) : fd_(fd) {}
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int get() const { return fd_; }
  /// A late write error may show only here (NFS).
  int close() { return ::close(std::exchange(fd_, -1)); }

private:
  int fd_;
};

/// What a chain of symbolic links ends at, so that the link itself stays.
fs::path behindLinks(fs::path file) {
  constexpr int kLongestChain = 40; // as Linux, path_resolution(7)
  std::error_code ignored;
  for (int i = 0; i < kLongestChain && fs::is_symlink(file, ignored); ++i) {
    const fs::path next = fs::read_symlink(file, ignored);
    if (ignored) break;
    file = next.is_absolute() ? next : file.parent_path() / next;
  }
  return file;
}

/// The new file under a name of its own in the target's folder; removed unless it was renamed.
class TemporaryFile {
public:
  explicit TemporaryFile(const fs::path& target)
      : target_(target), path_(unusedName(target)),
        fd_(::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666)) {
    if (fd_.get() < 0) fail(target, "no file can be made in its folder", errno);
  }
  ~TemporaryFile() {
    if (!renamed_) ::unlink(path_.c_str());
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  void keepOwnerAndMode(const struct stat& old) {
    // Only root may give files away; a file of one's own again is no reason not to save.
    if (::fchown(fd_.get(), old.st_uid, old.st_gid) != 0 && errno != EPERM) {
      fail(target_, "cannot keep its owner", errno);
    }
    if (::fchmod(fd_.get(), old.st_mode & 07777) != 0) {
      fail(target_, "cannot keep its permissions", errno);
    }
  }
  void write(std::string_view bytes) {
    while (!bytes.empty()) {
      const ssize_t n = ::write(fd_.get(), bytes.data(), bytes.size());
      if (n < 0 && errno == EINTR) continue;
      if (n < 0) fail(target_, "cannot be written", errno);
      bytes.remove_prefix(static_cast<std::size_t>(n));
    }
    if (::fsync(fd_.get()) != 0) fail(target_, "cannot be flushed to disk", errno);
    if (fd_.close() != 0) fail(target_, "cannot be written", errno);
  }
  void replaceTarget() {
    if (::rename(path_.c_str(), target_.c_str()) != 0) fail(target_, "cannot be replaced", errno);
    renamed_ = true;
  }

private:
  static fs::path unusedName(const fs::path& target) {
    static std::atomic<unsigned> count{0};
    return target.parent_path() /
           (".sumpwright-" + std::to_string(::getpid()) + "-" + std::to_string(++count) + ".tmp");
  }

  fs::path target_;
  fs::path path_;
  Descriptor fd_;
  bool renamed_ = false;
};

/// Makes the rename last through a power cut; file systems that cannot do it say EINVAL.
void flushFolder(const fs::path& file) {
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  const Descriptor fd(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (fd.get() >= 0 && ::fsync(fd.get()) != 0 && errno != EINVAL && errno != ENOTSUP) {
    fail(file, "was written, but its folder cannot be flushed to disk", errno);
  }
}

std::string readWhole(const fs::path& file) {
  const Descriptor fd(::open(file.c_str(), O_RDONLY | O_CLOEXEC));
  if (fd.get() < 0) fail(file, "cannot be read", errno);
  std::string bytes;
  std::array<char, 1 << 16> buffer;
  while (bytes.size() <= kLargestFile) {
    const ssize_t n = ::read(fd.get(), buffer.data(), buffer.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) fail(file, "cannot be read", errno);
    if (n == 0) break;
    bytes.append(buffer.data(), static_cast<std::size_t>(n));
  }
  return bytes;
}

/// A file that could not be opened again must never take the place of one that can.
void refuseUnreadable(const std::string& text, const fs::path& file) {
  try {
    readPlanText(text, file.string());
  } catch (const InputError& e) {
    throw InputError(file.string(), e.pointer, 0, "not saved: this value " + e.problem, e.mend);
  }
}

} // namespace

Plan readPlanFile(const fs::path& file) {
  std::error_code ignored;
  if (fs::is_directory(file, ignored)) {
    throw InputError(file.string(), "", 0, "is a folder", "give the plan file in it");
  }
  return readPlanText(readWhole(file), file.string());
}

void savePlanFile(const Plan& plan, const fs::path& file) {
  const std::string text = writePlanText(plan);
  refuseUnreadable(text, file);
  writeFileAtomically(file, text);
}

void writeFileAtomically(const fs::path& file, std::string_view bytes) {
  const fs::path target = behindLinks(file);
  struct stat old {};
  const bool exists = ::stat(target.c_str(), &old) == 0;
  if (exists && !S_ISREG(old.st_mode)) {
    throw InputError(file.string(), "", 0, "is not a regular file", "choose another name");
  }
  TemporaryFile fresh(target);
  if (exists) fresh.keepOwnerAndMode(old);
  fresh.write(bytes);
  fresh.replaceTarget();
  flushFolder(target);
}

} // namespace sump
