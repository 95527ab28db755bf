#pragma once
// A process that edits a plan until it is killed; recovery_test.cpp starts it many times.

namespace sump::testing {

/// The argument of the test program that makes it such a process.
inline constexpr const char* kEditUntilKilled = "--edit-until-killed";

/// Edits the plan file `argv[2]` with random pauses seeded by `argv[3]`, through the real document
/// and recovery, and saves it now and then. Tells on standard output, one line each: `E n t` edit n
/// was committed at t (milliseconds, steady clock), `S n` save of edit n returned, `K n` edit n is
/// known to be kept.
int editUntilKilled(int argc, char** argv);

} // namespace sump::testing
