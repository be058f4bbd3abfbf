/*
 * The duct step of src/gas/duct.ts written in plain C, statement for statement, as the yardstick of
 * bench/duct.ts. Build: gcc -O3 -march=native -o duct duct.c -lm
 *   duct STEPS  -> one line: seconds, then a checksum of the state, so that both sides can be compared.
 * Eight ducts of 12 to 120 cells, closed at both ends, started with the same pulse as the TypeScript side.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define DUCTS 8
#define SLOTS 1024
static const int lengths[DUCTS] = {12, 27, 43, 58, 74, 89, 105, 120};
static int first[DUCTS], last[DUCTS];
static double rho[SLOTS], u[SLOTS], p[SLOTS], y[SLOTS], v[SLOTS], face[SLOTS], area[SLOTS], invArea[SLOTS],
    taper[SLOTS], dragRate[SLOTS], heatRate[SLOTS], diameter[SLOTS], bend[SLOTS], wall[SLOTS], sumH[SLOTS], sumHT[SLOTS];
static double dx[DUCTS], roughFriction[DUCTS], heatFactor[DUCTS], fastestOf[DUCTS], end[8 * DUCTS], edge[8 * DUCTS];
static const double gamma_ = 1.32, gasConstant = 295, tiny = 1e-60;

static double slope(double a, double b) { return a * b > 0 ? (2 * a * b) / (a + b) : 0; }

static void mirrorGhost(int ghost, int near, int next) {
  rho[ghost] = rho[near] + (rho[near] - rho[next]) / 3;
  u[ghost] = u[near] + (u[near] - u[next]) / 3;
  p[ghost] = p[near] + (p[near] - p[next]) / 3;
  y[ghost] = y[near] + (y[near] - y[next]) / 3;
}

static void predictEnd(int d, int i, int side, double dt) {
  double r1 = rho[i], u1 = u[i], p1 = p[i];
  double dr = slope(r1 - rho[i - 1], rho[i + 1] - r1), du = slope(u1 - u[i - 1], u[i + 1] - u1);
  double dp = slope(p1 - p[i - 1], p[i + 1] - p1), dy = slope(y[i] - y[i - 1], y[i + 1] - y[i]);
  double sigma = 0.5 * dt / dx[d], uAlpha = u1 * taper[i], half = side ? 0.5 : -0.5;
  double r = r1 + half * dr - sigma * (u1 * dr + r1 * (du + uAlpha));
  double q = p1 + half * dp - sigma * (u1 * dp + gamma_ * p1 * (du + uAlpha));
  int fit = r > 0 && q > 0, at = 8 * d + 4 * side;
  end[at] = fit ? r : r1;
  end[at + 1] = fit ? u1 + half * du - sigma * (u1 * du + dp / r1) : u1;
  end[at + 2] = fit ? q : p1;
  end[at + 3] = fit ? y[i] + half * dy - sigma * u1 * dy : y[i];
}

static void predictEnds(double dt) {
  for (int d = 0; d < DUCTS; d++) {
    int a = first[d], b = last[d];
    mirrorGhost(a - 1, a, a + 1);
    mirrorGhost(b + 1, b, b - 1);
    predictEnd(d, a, 0, dt);
    predictEnd(d, b, 1, dt);
  }
}

static void refreshWallRates(double since) {
  double invR = 1 / gasConstant, fourByCv = 4 * (gamma_ - 1) / gasConstant;
  for (int d = 0; d < DUCTS; d++) {
    double rough = roughFriction[d], heatC = heatFactor[d], laminar = heatC > 0 ? 3.66 : 0;
    for (int i = first[d]; i <= last[d]; i++) {
      double t = p[i] * v[i] * invR, dia = diameter[i];
      double mu = 7.457e-6 + t * (4.1547e-8 - 7.4793e-12 * t), conduct = 6.1944e-3 + t * (7.3814e-5 - 1.2491e-8 * t);
      double reynolds = fmax(1, rho[i] * fabs(u[i]) * dia / mu), quarter = sqrt(sqrt(reynolds));
      double booked = heatRate[i] * since;
      sumH[i] += booked;
      sumHT[i] += booked * t;
      dragRate[i] = 2 / dia * (fmax(0.0791 / quarter, rough) + bend[i]);
      double h = (laminar + heatC * quarter * quarter * quarter) * conduct / dia;
      heatRate[i] = fourByCv * h / dia;
    }
  }
}

static void sweepDuct(int d, double dt) {
  const int i0 = first[d], i1 = last[d];
  const double gm1 = gamma_ - 1, invGm1 = 1 / gm1, halfGm1 = 0.5 * gm1, gasR = gasConstant;
  const double k = dt / dx[d], sigma = 0.5 * k, invCv = gm1 / gasConstant;
  const int eL = 8 * d;
  double fastest = 0, r0 = 0, u0 = 0, p0 = 0, y0 = 0, rL = 1, uL = 0, pL = 1, yL = 0, pMid0 = 0;
  double area0 = face[i0], mass0 = edge[eL] * area0, mom0 = edge[eL + 1], ener0 = edge[eL + 2] * area0,
         fresh0 = edge[eL + 3] * area0;
  double r1 = rho[i0], u1 = u[i0], p1 = p[i0], y1 = y[i0];
  double ar = r1 - rho[i0 - 1], au = u1 - u[i0 - 1], ap = p1 - p[i0 - 1], ay = y1 - y[i0 - 1];
  for (int j = i0; j <= i1 + 1; j++) {
    double rR = 1, uR = 0, pR = 1, yR = 0, rLn = 1, uLn = 0, pLn = 1, yLn = 0, pMid1 = 0;
    double r2 = 0, u2 = 0, p2 = 0, y2 = 0;
    if (j <= i1) {
      r2 = rho[j + 1];
      u2 = u[j + 1];
      p2 = p[j + 1];
      y2 = y[j + 1];
      double br = r2 - r1, bu = u2 - u1, bp = p2 - p1, by = y2 - y1;
      double nr = ar * br, nu = au * bu, np = ap * bp, ny = ay * by;
      double sr = ar + br, su = au + bu, sp = ap + bp, sy = ay + by;
      if (!(nr > tiny)) { nr = 0; sr = 1; }
      if (!(nu > tiny)) { nu = 0; su = 1; }
      if (!(np > tiny)) { np = 0; sp = 1; }
      if (!(ny > tiny)) { ny = 0; sy = 1; }
      double sru = sr * su, spy = sp * sy, q = 1 / (sru * spy), iru = q * spy, ipy = q * sru;
      double dr = nr * (su * iru), du = nu * (sr * iru), dp = np * (sy * ipy), dy = ny * (sp * ipy);
      ar = br;
      au = bu;
      ap = bp;
      ay = by;
      double uk = k * u1, stretch = sigma * (2 * du + u1 * taper[j]);
      double rt = r1 - (uk * dr + r1 * stretch);
      double ut = u1 - (uk * du + k * dp * v[j]);
      double yt = y1 - uk * dy;
      pMid1 = p1 - (uk * dp + gamma_ * p1 * stretch);
      rR = rt - dr;
      uR = ut - du;
      pR = pMid1 - dp;
      yR = yt - dy;
      rLn = rt + dr;
      uLn = ut + du;
      pLn = pMid1 + dp;
      yLn = yt + dy;
      if (!(rt > fabs(dr) && pMid1 > fabs(dp))) {
        rR = rLn = r1;
        uR = uLn = u1;
        pR = pLn = pMid1 = p1;
        yR = yLn = y1;
      }
    }
    if (j > i0) {
      double areaF = face[j], mass, mom, ener, fresh;
      if (j <= i1) {
        double rr = rL * rR, rm = rL + sqrt(rr), q = 1 / (rr * rm), inv = gamma_ * q * rm;
        double a2L = pL * rR * inv, a2R = pR * rL * inv;
        double wL = q * rr * rL, jump = uR - uL, lean = wL * jump, uRoe = uR - lean;
        double aRoe = sqrt(a2R + wL * (a2L - a2R) + halfGm1 * lean * (jump - lean));
        double sLa = uL - sqrt(a2L), sLb = uRoe - aRoe, sL = sLa < sLb ? sLa : sLb;
        double sRa = uR + sqrt(a2R), sRb = uRoe + aRoe, sR = sRa > sRb ? sRa : sRb;
        if (-sL > fastest) fastest = -sL;
        if (sR > fastest) fastest = sR;
        double mL = rL * (sL - uL), mR = rR * (sR - uR), den = mL - mR, num = pR - pL + mL * uL - mR * uR;
        if (num <= 0) {
          double e = pL * invGm1 + 0.5 * rL * uL * uL;
          if (sL >= 0) {
            mass = rL * uL;
            mom = mass * uL + pL;
            ener = uL * (e + pL);
          } else {
            double rest = sL * den - num, both = num / (den * rest), sM = both * rest, z = both * den;
            double pM = pL + mL * (sM - uL);
            mass = mL * z;
            mom = mass * sM + pM;
            ener = z * ((sL - uL) * e - pL * uL + pM * sL);
          }
          fresh = mass * yL;
        } else {
          double e = pR * invGm1 + 0.5 * rR * uR * uR;
          if (sR <= 0) {
            mass = rR * uR;
            mom = mass * uR + pR;
            ener = uR * (e + pR);
          } else {
            double rest = sR * den - num, both = num / (den * rest), sM = both * rest, z = both * den;
            double pM = pR + mR * (sM - uR);
            mass = mR * z;
            mom = mass * sM + pM;
            ener = z * ((sR - uR) * e - pR * uR + pM * sR);
          }
          fresh = mass * yR;
        }
      } else {
        mass = edge[eL + 4];
        mom = edge[eL + 5];
        ener = edge[eL + 6];
        fresh = edge[eL + 7];
      }
      mass *= areaF;
      ener *= areaF;
      fresh *= areaF;
      int i = j - 1;
      double kA = k * invArea[i], rn = r0 - kA * (mass - mass0);
      double m0 = r0 * u0, mn = m0 - kA * (areaF * (mom - pMid0) - area0 * (mom0 - pMid0));
      double en = p0 * invGm1 + 0.5 * u0 * m0 - kA * (ener - ener0);
      double heat = heatRate[i] * dt, slow = rn + dragRate[i] * dt * fabs(mn), square = rn * rn, cool = square + heat * (rn + 0.5 * heat);
      double both = slow * cool, q = 1 / (rn * both), vn = q * both, un = mn * (q * rn) * cool;
      double t = (en - 0.5 * rn * un * un) * vn * invCv;
      double tn = wall[i] + (t - wall[i]) * square * (q * rn * slow), pn = rn * tn * gasR;
      double yn = (r0 * y0 - kA * (fresh - fresh0)) * vn;
      rho[i] = rn;
      u[i] = un;
      p[i] = pn;
      y[i] = yn;
      v[i] = vn;
      area0 = areaF;
      mass0 = mass;
      mom0 = mom;
      ener0 = ener;
      fresh0 = fresh;
    }
    r0 = r1;
    u0 = u1;
    p0 = p1;
    y0 = y1;
    r1 = r2;
    u1 = u2;
    p1 = p2;
    y1 = y2;
    rL = rLn;
    uL = uLn;
    pL = pLn;
    yL = yLn;
    pMid0 = pMid1;
  }
  fastestOf[d] = fastest;
}

/* walls at both ends: no flow, the pressure of the predicted face */
static void closeEnds(void) {
  for (int d = 0; d < DUCTS; d++)
    for (int side = 0; side < 2; side++) {
      edge[8 * d + 4 * side] = 0;
      edge[8 * d + 4 * side + 1] = end[8 * d + 4 * side + 2];
      edge[8 * d + 4 * side + 2] = 0;
      edge[8 * d + 4 * side + 3] = 0;
    }
}

static void start(void) {
  int slot = 0;
  for (int d = 0; d < DUCTS; d++) {
    int n = lengths[d];
    first[d] = slot + 1;
    last[d] = slot + n;
    slot += n + 2;
    dx[d] = 0.01;
    roughFriction[d] = 0.004;
    heatFactor[d] = 0.07;
    for (int c = 0; c <= n; c++) {
      int i = first[d] + c;
      double xf = (double)c / n, dia = 0.035 + 0.05 * xf;
      face[i] = 0.7853981633974483 * dia * dia;
    }
    for (int c = 0; c < n; c++) {
      int i = first[d] + c;
      area[i] = (face[i] + face[i + 1] + sqrt(face[i] * face[i + 1])) / 3;
      invArea[i] = 1 / area[i];
      taper[i] = (face[i + 1] - face[i]) / area[i];
      diameter[i] = sqrt(4 * area[i] / 3.141592653589793);
      wall[i] = 600;
      double s = ((double)c + 0.5) / n, pulse = exp(-50 * (s - 0.3) * (s - 0.3));
      double pr = 101325 * (1 + 0.8 * pulse), t = 900 - 300 * s;
      rho[i] = pr / (gasConstant * t);
      u[i] = 0;
      p[i] = pr;
      y[i] = s;
      v[i] = 1 / rho[i];
    }
  }
}

int main(int argc, char **argv) {
  int steps = argc > 1 ? atoi(argv[1]) : 2000;
  start();
  struct timespec a, b;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &a); /* processor time: others on the machine do not count */
  for (int s = 0; s < steps; s++) {
    if (s % 4 == 0) refreshWallRates(4 * 8e-6);
    predictEnds(8e-6);
    closeEnds();
    for (int d = 0; d < DUCTS; d++) sweepDuct(d, 8e-6);
  }
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &b);
  double sum = 0;
  for (int d = 0; d < DUCTS; d++)
    for (int i = first[d]; i <= last[d]; i++) sum += p[i] * (i % 7 + 1) + 1e4 * u[i];
  printf("%.9f %.12e\n", (b.tv_sec - a.tv_sec) + 1e-9 * (b.tv_nsec - a.tv_nsec), sum);
  return 0;
}
