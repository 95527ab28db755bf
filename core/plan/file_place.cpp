#include "core/plan/file_place.h"

namespace sump {

std::string FilePlace::pointer() const {
  if (up_ == nullptr) return "";
  return up_->pointer() + "/" + (inList_ ? std::to_string(index_) : pointerStep(key_));
}

std::string pointerStep(std::string_view key) {
  std::string out;
  for (const char c : key) {
    if (c == '~') {
      out += "~0";
    } else if (c == '/') {
      out += "~1";
    } else {
      out += c;
    }
  }
  return out;
}

} // namespace sump
