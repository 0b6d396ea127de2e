// Exact first and second derivatives of a small formula: every number carries its gradient and its Hessian with
// respect to N inputs (second-order forward mode). Plain loops; N is a dozen or two.
#pragma once

#include <array>
#include <cmath>

template <int N>
struct Jet {
  static constexpr int pairs = N * (N + 1) / 2;
  double value = 0;
  std::array<double, N> gradient{};
  /// Lower triangle, row by row: (i, j) with j <= i at i (i + 1) / 2 + j.
  std::array<double, pairs> hessian{};

  Jet() = default;
  Jet(double constant) : value(constant) {}

  static Jet input(double value, int which) {
    Jet jet(value);
    jet.gradient[which] = 1;
    return jet;
  }
};

/// f(a), given f, f' and f'' at a.
template <int N>
Jet<N> chain(const Jet<N>& a, double f, double first, double second) {
  Jet<N> r(f);
  for (int i = 0; i < N; i++) r.gradient[i] = first * a.gradient[i];
  for (int i = 0, k = 0; i < N; i++) {
    for (int j = 0; j <= i; j++, k++) r.hessian[k] = first * a.hessian[k] + second * a.gradient[i] * a.gradient[j];
  }
  return r;
}

template <int N>
Jet<N> operator+(Jet<N> a, const Jet<N>& b) {
  a.value += b.value;
  for (int i = 0; i < N; i++) a.gradient[i] += b.gradient[i];
  for (int k = 0; k < Jet<N>::pairs; k++) a.hessian[k] += b.hessian[k];
  return a;
}

template <int N>
Jet<N> operator*(const Jet<N>& a, const Jet<N>& b) {
  Jet<N> r(a.value * b.value);
  for (int i = 0; i < N; i++) r.gradient[i] = a.value * b.gradient[i] + b.value * a.gradient[i];
  for (int i = 0, k = 0; i < N; i++) {
    for (int j = 0; j <= i; j++, k++) {
      r.hessian[k] = a.value * b.hessian[k] + b.value * a.hessian[k] + a.gradient[i] * b.gradient[j] +
                     a.gradient[j] * b.gradient[i];
    }
  }
  return r;
}

template <int N>
Jet<N> operator*(double c, Jet<N> a) {
  a.value *= c;
  for (double& g : a.gradient) g *= c;
  for (double& h : a.hessian) h *= c;
  return a;
}

template <int N>
Jet<N> operator+(double c, Jet<N> a) {
  a.value += c;
  return a;
}

template <int N> Jet<N> operator-(const Jet<N>& a) { return -1.0 * a; }
template <int N> Jet<N> operator-(const Jet<N>& a, const Jet<N>& b) { return a + (-1.0 * b); }
template <int N> Jet<N> operator-(const Jet<N>& a, double c) { return -c + a; }
template <int N> Jet<N> operator-(double c, const Jet<N>& a) { return c + (-1.0 * a); }
template <int N> Jet<N> operator+(const Jet<N>& a, double c) { return c + a; }
template <int N> Jet<N> operator*(const Jet<N>& a, double c) { return c * a; }
template <int N> Jet<N> operator/(const Jet<N>& a, double c) { return (1 / c) * a; }

template <int N>
Jet<N> operator/(double c, const Jet<N>& a) {
  const double r = 1 / a.value;
  return chain(a, c * r, -c * r * r, 2 * c * r * r * r);
}

template <int N>
Jet<N> operator/(const Jet<N>& a, const Jet<N>& b) {
  return a * (1.0 / b);
}

template <int N>
Jet<N> sin(const Jet<N>& a) {
  return chain(a, std::sin(a.value), std::cos(a.value), -std::sin(a.value));
}

template <int N>
Jet<N> cos(const Jet<N>& a) {
  return chain(a, std::cos(a.value), -std::sin(a.value), -std::cos(a.value));
}

template <int N>
Jet<N> tanh(const Jet<N>& a) {
  const double t = std::tanh(a.value);
  return chain(a, t, 1 - t * t, -2 * t * (1 - t * t));
}

template <int N>
Jet<N> sqrt(const Jet<N>& a) {
  const double r = std::sqrt(a.value);
  return chain(a, r, 0.5 / r, -0.25 / (r * a.value));
}
