#include "core/study/water_air.h"

#include <array>
#include <cmath>

namespace sump {

namespace {

constexpr double kStandardPressure = 101325; // Pa
constexpr double kIceKelvin = 273.15;

/// IF97, table 34.
constexpr std::array<double, 10> kSaturation = {
    0.11670521452767e4,  -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
    -0.32325550322333e7, 0.14915108613530e2,  -0.48232657361591e4, 0.40511340542057e6,
    -0.23855557567849,   0.65017534844798e3};

struct Term {
  int i;
  int j;
  double n;
};

/// IF97, table 2: exponents and coefficients of the Gibbs energy of region 1.
constexpr std::array<Term, 34> kLiquid = {{
    {0, -2, 0.14632971213167},        {0, -1, -0.84548187169114},
    {0, 0, -0.37563603672040e1},      {0, 1, 0.33855169168385e1},
    {0, 2, -0.95791963387872},        {0, 3, 0.15772038513228},
    {0, 4, -0.16616417199501e-1},     {0, 5, 0.81214629983568e-3},
    {1, -9, 0.28319080123804e-3},     {1, -7, -0.60706301565874e-3},
    {1, -1, -0.18990068218419e-1},    {1, 0, -0.32529748770505e-1},
    {1, 1, -0.21841717175414e-1},     {1, 3, -0.52838357969930e-4},
    {2, -3, -0.47184321073267e-3},    {2, 0, -0.30001780793026e-3},
    {2, 1, 0.47661393906987e-4},      {2, 3, -0.44141845330846e-5},
    {2, 17, -0.72694996297594e-15},   {3, -4, -0.31679644845054e-4},
    {3, 0, -0.28270797985312e-5},     {3, 6, -0.85205128120103e-9},
    {4, -5, -0.22425281908000e-5},    {4, -2, -0.65171222895601e-6},
    {4, 10, -0.14341729937924e-12},   {5, -8, -0.40516996860117e-6},
    {8, -11, -0.12734301741641e-8},   {8, -6, -0.17424871230634e-9},
    {21, -29, -0.68762131295531e-18}, {23, -31, 0.14478307828521e-19},
    {29, -38, 0.26335781662795e-22},  {30, -39, -0.11947622640071e-22},
    {31, -40, 0.18228094581404e-23},  {32, -41, -0.93537087292458e-25},
}};

/// R12-08, table 1: viscosity of the dilute gas.
constexpr std::array<double, 4> kDilute = {1.67752, 2.20462, 0.6366564, -0.241605};

/// R12-08, table 2: the effect of density.
constexpr std::array<Term, 21> kDense = {{
    {0, 0, 5.20094e-1},  {1, 0, 8.50895e-2},  {2, 0, -1.08374},    {3, 0, -2.89555e-1},
    {0, 1, 2.22531e-1},  {1, 1, 9.99115e-1},  {2, 1, 1.88797},     {3, 1, 1.26613},
    {5, 1, 1.20573e-1},  {0, 2, -2.81378e-1}, {1, 2, -9.06851e-1}, {2, 2, -7.72479e-1},
    {3, 2, -4.89837e-1}, {4, 2, -2.57040e-1}, {0, 3, 1.61913e-1},  {1, 3, 2.57399e-1},
    {0, 4, -3.25372e-2}, {3, 4, 6.98452e-2},  {4, 5, 8.72102e-3},  {3, 6, -4.35673e-3},
    {5, 6, -5.93264e-4},
}};

} // namespace

std::optional<Pressure> saturationPressure(Temperature t) {
  const double kelvins = t.value();
  if (!(kelvins >= kIceKelvin && kelvins <= 647.096)) return std::nullopt;
  const auto& n = kSaturation;
  const double theta = kelvins + n[8] / (kelvins - n[9]);
  const double a = theta * theta + n[0] * theta + n[1];
  const double b = n[2] * theta * theta + n[3] * theta + n[4];
  const double c = n[5] * theta * theta + n[6] * theta + n[7];
  return pascals(1e6 * std::pow(2 * c / (-b + std::sqrt(b * b - 4 * a * c)), 4));
}

std::optional<double> liquidSpecificVolume(Temperature t, Pressure p) {
  constexpr double kGasConstant = 461.526;              // J/(kg K), IF97 equation 1
  constexpr double kPressure = 16.53e6, kTemper = 1386; // reducing values of region 1
  const auto saturation = saturationPressure(t);
  if (!saturation || t.value() > 623.15 || p < *saturation || p.value() > 100e6)
    return std::nullopt;
  const double pi = p.value() / kPressure, tau = kTemper / t.value();
  double slope = 0; // of the reduced Gibbs energy with pi
  for (const Term& term : kLiquid) {
    if (term.i == 0) continue;
    slope -= term.n * term.i * std::pow(7.1 - pi, term.i - 1) * std::pow(tau - 1.222, term.j);
  }
  return pi * slope * kGasConstant * t.value() / p.value();
}

std::optional<Density> waterDensity(Temperature t, Pressure p) {
  const auto volume = liquidSpecificVolume(t, p);
  if (!volume) return std::nullopt;
  return kilogramsPerCubicMetre(1 / *volume);
}

std::optional<Density> waterDensity(Temperature t) {
  return waterDensity(t, pascals(kStandardPressure));
}

std::optional<Viscosity> waterViscosity(Temperature t, Density rho) {
  const double kelvins = t.value(), density = rho.value();
  if (!(kelvins >= kIceKelvin && kelvins <= 1173.15)) return std::nullopt;
  if (!(density > 0 && density <= 1200)) return std::nullopt;
  const double reduced = kelvins / 647.096, dense = density / 322.0;
  double dilute = 0;
  for (std::size_t i = 0; i < kDilute.size(); ++i)
    dilute += kDilute[i] / std::pow(reduced, static_cast<double>(i));
  double sum = 0;
  for (const Term& term : kDense)
    sum += term.n * std::pow(1 / reduced - 1, term.i) * std::pow(dense - 1, term.j);
  return pascalSeconds(1e-6 * 100 * std::sqrt(reduced) / dilute * std::exp(dense * sum));
}

std::optional<Viscosity> waterViscosity(Temperature t) {
  const auto rho = waterDensity(t);
  if (!rho) return std::nullopt;
  return waterViscosity(t, *rho);
}

std::optional<Pressure> pressureAtGeopotential(Length h) {
  const double metresUp = h.value();
  if (!(metresUp >= -5000 && metresUp <= 11000)) return std::nullopt;
  // US Standard Atmosphere 1976, tables 2 and 3: g0, M0, R*, lapse rate, T0, P0.
  constexpr double kMolarMass = 28.9644e-3, kGasConstant = 8.31432;
  constexpr double kLapse = 0.0065, kSeaKelvin = 288.15;
  constexpr double kExponent = kGravity * kMolarMass / (kGasConstant * kLapse);
  return pascals(kStandardPressure * std::pow(1 - kLapse * metresUp / kSeaKelvin, kExponent));
}

std::optional<Pressure> atmosphericPressure(Length altitude) {
  constexpr double kEarthRadius = 6356766; // m, US Standard Atmosphere 1976
  const double z = altitude.value();
  if (!(z > -kEarthRadius / 2)) return std::nullopt;
  return pressureAtGeopotential(metres(kEarthRadius * z / (kEarthRadius + z)));
}

} // namespace sump
