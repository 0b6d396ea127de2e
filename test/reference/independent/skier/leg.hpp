// The skier as a mass on a leg over skis that follow a path: accelerations and rates, SI, radians, right positive.
#pragma once

#include <array>
#include <cmath>

constexpr double gravity = 9.81;
constexpr double degree = M_PI / 180;

struct Skier {
  double mass, friction, dragArea, airDensity, slope;
  /// Sidecut radius and contact length of the ski, m; base bevel, rad.
  double sidecutRadius, contactLength, bevel = 0, scrape = 1;
};

/// How far the ski is on its edge, -1 to 1: no arc on a flat ski.
template <class Number>
Number onEdge(const Number& edge) {
  using std::tanh;
  return tanh(edge / (4 * degree));
}

/// The curvature the ski wants by the cosine rule, 1/m.
template <class Number>
Number ownCurvature(const Skier& s, const Number& edge) {
  using std::cos;
  return onEdge(edge) / (s.sidecutRadius * cos(edge));
}

template <class Number>
struct Rates {
  Number ski, heading, speed, leanRate, legSpeed;
};

/// load is in body weights; drift is slip on purpose, rad.
template <class Number>
Rates<Number> ratesOnLeg(const Skier& s, const Number& heading, const Number& u, const Number& lean,
                         const Number& leanRate, const Number& leg, const Number& legSpeed, const Number& curvature,
                         const Number& mismatch, const Number& drift, const Number& load) {
  using std::cos;
  using std::sin;
  using std::sqrt;
  const double along = gravity * std::sin(s.slope), into = gravity * std::cos(s.slope);
  const Number sine = sin(lean), cosine = cos(lean);
  const Number offset = leg * sine;
  const Number offsetRate = leg * cosine * leanRate + legSpeed * sine;
  const Number shorter = 1.0 - offset * curvature;
  const Number v = u / shorter;
  const Number sideways = v * v * curvature * shorter + along * sin(heading);
  const Number push = gravity * load;
  const Number scraping = s.scrape * (drift + sqrt(mismatch * mismatch + 1e-6) * (s.contactLength / 4));
  Rates<Number> r;
  r.ski = v;
  r.heading = v * curvature;
  r.speed = offsetRate * v * curvature + along * cos(heading) - (s.friction + scraping) * push -
            (s.airDensity * s.dragArea / (2 * s.mass)) * u * u;
  r.leanRate = (into * sine - sideways * cosine - 2.0 * legSpeed * leanRate) / leg;
  r.legSpeed = push - sideways * sine - into * cosine + leg * leanRate * leanRate;
  return r;
}
