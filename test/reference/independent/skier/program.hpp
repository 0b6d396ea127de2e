// A nonlinear program put together from small formulas, each of a handful of the variables, and solved by Ipopt
// with exact second derivatives.
#pragma once

#include <IpIpoptApplication.hpp>
#include <IpSolveStatistics.hpp>
#include <IpTNLP.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <vector>

#include "jet.hpp"

constexpr double unbounded = 1e20;

/// M formulas of N variables: constraints, or (M = 1) an addend of the objective.
struct Piece {
  std::vector<int> at;
  int rows = 0;
  virtual ~Piece() = default;
  virtual void values(const double* x, double* out) const = 0;
  /// gradient: rows × N; hessian: lower triangle of Σ weight · row (null where not wanted).
  virtual void derivatives(const double* x, const double* weights, double* gradient, double* hessian) const = 0;
};

template <int N, int M, class Formula>
struct PieceOf : Piece {
  Formula formula;
  explicit PieceOf(Formula f) : formula(std::move(f)) { rows = M; }

  void values(const double* x, double* out) const override {
    std::array<double, N> in;
    for (int i = 0; i < N; i++) in[i] = x[at[i]];
    std::array<double, M> r = formula(in);
    for (int i = 0; i < M; i++) out[i] = r[i];
  }

  void derivatives(const double* x, const double* weights, double* gradient, double* hessian) const override {
    std::array<Jet<N>, N> in;
    for (int i = 0; i < N; i++) in[i] = Jet<N>::input(x[at[i]], i);
    const std::array<Jet<N>, M> r = formula(in);
    for (int m = 0; m < M && gradient; m++) {
      for (int i = 0; i < N; i++) gradient[m * N + i] = r[m].gradient[i];
    }
    for (int k = 0; k < Jet<N>::pairs && hessian; k++) {
      hessian[k] = 0;
      for (int m = 0; m < M; m++) hessian[k] += weights[m] * r[m].hessian[k];
    }
  }
};

class Program {
 public:
  std::vector<double> x, lower, upper;
  std::vector<double> rowLower, rowUpper;
  double objective = 0;
  int iterations = 0;

  int variable(double start, double lo = -unbounded, double hi = unbounded) {
    x.push_back(start);
    lower.push_back(lo);
    upper.push_back(hi);
    return static_cast<int>(x.size()) - 1;
  }

  void fix(int which, double value) { x[which] = lower[which] = upper[which] = value; }

  template <int N, class Formula>
  void minimise(const std::array<int, N>& at, Formula formula) {
    auto piece = std::make_unique<PieceOf<N, 1, Formula>>(std::move(formula));
    piece->at.assign(at.begin(), at.end());
    addends.push_back(std::move(piece));
  }

  template <int N, int M, class Formula>
  void subject(const std::array<int, N>& at, Formula formula,
               std::array<double, M> lo, std::array<double, M> hi) {
    auto piece = std::make_unique<PieceOf<N, M, Formula>>(std::move(formula));
    piece->at.assign(at.begin(), at.end());
    constraints.push_back(std::move(piece));
    for (int i = 0; i < M; i++) {
      rowLower.push_back(lo[i]);
      rowUpper.push_back(hi[i]);
    }
  }

  /// Solves from x as it stands and leaves the answer there; true only where Ipopt says "solved".
  /// nearby: x is the answer to almost the same problem.
  bool solve(double tolerance = 1e-8, bool nearby = false);
  /// Ipopt compares every derivative with differences and says on standard output where they disagree.
  bool checked = false;

 private:
  friend class Bridge;
  std::vector<std::unique_ptr<Piece>> addends, constraints;
};

class Bridge : public Ipopt::TNLP {
 public:
  explicit Bridge(Program& program) : p(program) {}

  bool get_nlp_info(int& n, int& m, int& jacobian, int& hessian, IndexStyleEnum& style) override {
    n = static_cast<int>(p.x.size());
    m = static_cast<int>(p.rowLower.size());
    jacobian = hessian = 0;
    for (auto& c : p.constraints) jacobian += c->rows * size(*c), hessian += size(*c) * (size(*c) + 1) / 2;
    for (auto& a : p.addends) hessian += size(*a) * (size(*a) + 1) / 2;
    style = C_STYLE;
    return true;
  }

  bool get_bounds_info(int n, double* xl, double* xu, int m, double* gl, double* gu) override {
    std::copy_n(p.lower.begin(), n, xl);
    std::copy_n(p.upper.begin(), n, xu);
    std::copy_n(p.rowLower.begin(), m, gl);
    std::copy_n(p.rowUpper.begin(), m, gu);
    return true;
  }

  bool get_starting_point(int n, bool, double* x, bool, double*, double*, int, bool, double*) override {
    std::copy_n(p.x.begin(), n, x);
    return true;
  }

  bool eval_f(int, const double* x, bool, double& f) override {
    f = 0;
    for (auto& a : p.addends) {
      double v;
      a->values(x, &v);
      f += v;
    }
    return std::isfinite(f);
  }

  bool eval_grad_f(int n, const double* x, bool, double* g) override {
    std::fill_n(g, n, 0.0);
    for (auto& a : p.addends) {
      std::vector<double> part(a->at.size());
      a->derivatives(x, nullptr, part.data(), nullptr);
      for (size_t i = 0; i < part.size(); i++) g[a->at[i]] += part[i];
    }
    return true;
  }

  bool eval_g(int, const double* x, bool, int, double* g) override {
    for (auto& c : p.constraints) c->values(x, g), g += c->rows;
    return true;
  }

  bool eval_jac_g(int, const double* x, bool, int, int, int* row, int* column, double* values) override {
    int first = 0;
    for (auto& c : p.constraints) {
      const int n = size(*c);
      if (values) {
        c->derivatives(x, nullptr, values, nullptr);
        values += c->rows * n;
      } else {
        for (int m = 0; m < c->rows; m++) {
          for (int i = 0; i < n; i++) *row++ = first + m, *column++ = c->at[i];
        }
      }
      first += c->rows;
    }
    return true;
  }

  bool eval_h(int, const double* x, bool, double scale, int, const double* lambda, bool, int, int* row,
              int* column, double* values) override {
    auto each = [&](const Piece& piece, const double* weights) {
      const int n = size(piece);
      if (values) {
        piece.derivatives(x, weights, nullptr, values);
        values += n * (n + 1) / 2;
        return;
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          *row++ = std::max(piece.at[i], piece.at[j]);
          *column++ = std::min(piece.at[i], piece.at[j]);
        }
      }
    };
    for (auto& a : p.addends) each(*a, &scale);
    for (auto& c : p.constraints) {
      each(*c, lambda);
      if (lambda) lambda += c->rows;
    }
    return true;
  }

  void finalize_solution(Ipopt::SolverReturn, int n, const double* x, const double*, const double*, int,
                         const double*, const double*, double f, const Ipopt::IpoptData*,
                         Ipopt::IpoptCalculatedQuantities*) override {
    p.x.assign(x, x + n);
    p.objective = f;
  }

 private:
  Program& p;
  static int size(const Piece& piece) { return static_cast<int>(piece.at.size()); }
};

inline bool Program::solve(double tolerance, bool nearby) {
  Ipopt::SmartPtr<Ipopt::IpoptApplication> app = IpoptApplicationFactory();
  app->Options()->SetNumericValue("tol", tolerance);
  app->Options()->SetIntegerValue("max_iter", 3000);
  app->Options()->SetIntegerValue("print_level", checked ? 4 : 0);
  app->Options()->SetStringValue("sb", "yes");
  app->Options()->SetStringValue("linear_solver", "mumps");
  app->Options()->SetStringValue("mu_strategy", "adaptive");
  if (nearby) {
    // Stay beside the given answer: a monotone barrier from a low value, and no push away from the bounds.
    app->Options()->SetStringValue("mu_strategy", "monotone");
    app->Options()->SetNumericValue("mu_init", 1e-5);
    app->Options()->SetNumericValue("bound_push", 1e-6);
    app->Options()->SetNumericValue("bound_frac", 1e-6);
    app->Options()->SetNumericValue("slack_bound_push", 1e-6);
    app->Options()->SetNumericValue("slack_bound_frac", 1e-6);
  }
  if (checked) {
    // Away from the crude start, where much is zero and a wrong term would not show.
    app->Options()->SetStringValue("derivative_test", "second-order");
    app->Options()->SetNumericValue("derivative_test_perturbation", 1e-6);
    app->Options()->SetNumericValue("derivative_test_tol", 1e-3);
    app->Options()->SetNumericValue("point_perturbation_radius", 0.05);
  }
  app->Initialize();
  Ipopt::SmartPtr<Ipopt::TNLP> bridge = new Bridge(*this);
  const auto status = app->OptimizeTNLP(bridge);
  iterations = IsValid(app->Statistics()) ? app->Statistics()->IterationCount() : 0;
  return status == Ipopt::Solve_Succeeded;
}
