#pragma once
// An ordered list of plan objects with stable ids. Copies share the objects that did not change,
// so that keeping every earlier Plan for undo is cheap. Never holds a null.

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sump {

/// Names an object of the plan for good; unique within the plan; never empty in a valid plan.
using Id = std::string;

template <class T> class Items {
public:
  class Iterator {
  public:
    using value_type = T;
    using reference = const T&;
    using difference_type = std::ptrdiff_t;
    explicit Iterator(typename std::vector<std::shared_ptr<const T>>::const_iterator it)
        : it_(it) {}
    const T& operator*() const { return **it_; }
    const T* operator->() const { return it_->get(); }
    Iterator& operator++() {
      ++it_;
      return *this;
    }
    bool operator==(const Iterator&) const = default;

  private:
    typename std::vector<std::shared_ptr<const T>>::const_iterator it_;
  };

  Items() = default;
  Iterator begin() const { return Iterator(list_.begin()); }
  Iterator end() const { return Iterator(list_.end()); }
  std::size_t size() const { return list_.size(); }
  bool empty() const { return list_.empty(); }
  const T& operator[](std::size_t i) const { return *list_[i]; }
  const T& front() const { return *list_.front(); }
  const T& back() const { return *list_.back(); }

  /// Position of the object with this id, or -1.
  int indexOf(std::string_view id) const {
    for (std::size_t i = 0; i < list_.size(); ++i) {
      if (list_[i]->id == id) return static_cast<int>(i);
    }
    return -1;
  }
  /// The object with this id, or null.
  const T* find(std::string_view id) const {
    const int i = indexOf(id);
    return i < 0 ? nullptr : list_[static_cast<std::size_t>(i)].get();
  }

  /// Replaces the object of the same id in place, or appends.
  void put(T item) {
    const int i = indexOf(item.id);
    auto shared = std::make_shared<const T>(std::move(item));
    if (i < 0) {
      list_.push_back(std::move(shared));
    } else {
      list_[static_cast<std::size_t>(i)] = std::move(shared);
    }
  }
  /// Appends without looking for the id; for readers, which check ids for the whole plan.
  void append(T item) { list_.push_back(std::make_shared<const T>(std::move(item))); }
  void insert(std::size_t position, T item) {
    list_.insert(list_.begin() + static_cast<std::ptrdiff_t>(position),
                 std::make_shared<const T>(std::move(item)));
  }
  /// False when there was none.
  bool erase(std::string_view id) {
    const int i = indexOf(id);
    if (i < 0) return false;
    list_.erase(list_.begin() + i);
    return true;
  }
  /// Moves the object at `from` so that it stands at `to`.
  void reorder(std::size_t from, std::size_t to) {
    auto item = list_[from];
    list_.erase(list_.begin() + static_cast<std::ptrdiff_t>(from));
    list_.insert(list_.begin() + static_cast<std::ptrdiff_t>(to), std::move(item));
  }

  bool operator==(const Items& other) const {
    if (list_.size() != other.list_.size()) return false;
    for (std::size_t i = 0; i < list_.size(); ++i) {
      if (list_[i] != other.list_[i] && !(*list_[i] == *other.list_[i])) return false;
    }
    return true;
  }

private:
  std::vector<std::shared_ptr<const T>> list_;
};

} // namespace sump
