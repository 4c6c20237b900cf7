/* The two motion models in C, the same algorithms line by line, for the speed ratio of bench/main.ts.
 * cc -O3 -march=native reference.c -o reference -lm;  reference INPUT MODEL COUNT  ->  seconds and a checksum.
 * INPUT: doubles columns rows cellX cellY firstX filmStep tableSize, law table, film map, then
 * ball: mass radius i1 i2 i3 kappa rolling epsilon gravity; start: x vx vy wx wy wz; until; q0..q3; L0..L2. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static int columns, rows;
static double cellX, cellY, firstX, filmStep, *law, *met;
static double mass, radius, i1, i2, i3, kappa, rolling, epsilon, gravity, until;

static inline double friction(double x, double y) {
  double across = (x - firstX) * (1 / cellX), along = y * (1 / cellY);
  if (!(across > 0)) across = 0; else if (across > columns - 1.000001) across = columns - 1.000001;
  if (!(along > 0)) along = 0; else if (along > rows - 1.000001) along = rows - 1.000001;
  int column = (int)across, row = (int)along, at = row * columns + column;
  double right = across - column;
  double near = met[at] + (met[at + 1] - met[at]) * right;
  double far = met[at + columns] + (met[at + columns + 1] - met[at + columns]) * right;
  double place = (near + (far - near) * (along - row)) * (1 / filmStep);
  int cell = (int)place;
  return law[cell] + (law[cell + 1] - law[cell]) * (place - cell);
}

static double averaged(const double STEP, double x, double vx, double vy, double wx, double wy) {
  const double k = 1 + 1 / kappa, e2 = epsilon * epsilon, resist = rolling * gravity / kappa;
  double y = 0, ux = vx - radius * wy, uy = vy + radius * wx, t = 0, slip = sqrt(ux * ux + uy * uy);
  double hookSlip = 0.75 * slip, hookY = -1, rollY = slip <= 0.15 ? 0 : -1, breakX = x, breakY = y;
  while (rollY < 0 && y < until - 1e-12 && vy > 0.3) {
    double step = STEP - fmod(y, STEP);
    if (step < 1e-9) step = STEP;
    double dx = 0, dvx = 0, dvy = 0, dux = 0, duy = 0, dt = 0, sx = 0, svx = 0, svy = 0, sux = 0, suy = 0, st = 0;
    for (int stage = 0; stage < 4; stage++) {
      double ahead = stage == 0 ? 0 : stage == 3 ? step : 0.5 * step, weight = stage == 0 || stage == 3 ? 1 : 2;
      double px = x + ahead * dx, pvx = vx + ahead * dvx, pvy = vy + ahead * dvy, pux = ux + ahead * dux, puy = uy + ahead * duy;
      double inverse = 1 / pvy, grip = friction(px, y + ahead) * gravity / sqrt(pux * pux + puy * puy + e2) * inverse;
      double rx = pvx - pux, ry = pvy - puy, drag = resist / sqrt(rx * rx + ry * ry + 1e-6) * inverse;
      dx = pvx * inverse; dvx = -grip * pux; dvy = -grip * puy; dux = k * dvx + drag * rx; duy = k * dvy + drag * ry; dt = inverse;
      sx += weight * dx; svx += weight * dvx; svy += weight * dvy; sux += weight * dux; suy += weight * duy; st += weight * dt;
      if (stage == 0) {
        double usedUp = 0.9 / (k * grip);
        if (step > usedUp) step = fmax(usedUp, 0.08);
        if (step > until - y) step = until - y;
      }
    }
    double sixth = step / 6, before = slip;
    x += sixth * sx; vx += sixth * svx; vy += sixth * svy; ux += sixth * sux; uy += sixth * suy; t += sixth * st;
    slip = sqrt(ux * ux + uy * uy);
    if (hookY < 0 && slip <= hookSlip) hookY = y + step * (before - hookSlip) / (before - slip);
    if (slip <= 0.15) rollY = y + step * (before - 0.15) / fmax(before - slip, 1e-12);
    y += step;
    if (x > breakX) { breakX = x; breakY = y; }
  }
  if (rollY >= 0 && vy > 0.3) {
    vx -= ux / k; vy -= uy / k;
    double heading = hypot(vx, vy), slowing = rolling * gravity / (1 + kappa), path = (until - y) * heading / vy, left = heading * heading - 2 * slowing * path;
    if (left > 0) {
      double pace = sqrt(left);
      x += vx / heading * path; vx *= pace / heading; vy *= pace / heading; t += 2 * path / (heading + pace);
      if (x > breakX) { breakX = x; breakY = until; }
    }
  }
  return x + 1e-6 * (vx + vy + t + hookY + breakX + breakY);
}

/* State: t x y vx vy Lx Ly Lz qw qx qy qz sliding rolling. */
static double fullStep(double *s, double longest) {
  const double e2 = epsilon * epsilon, resist = rolling * mass * gravity * radius, j1 = 1 / i1, j2 = 1 / i2, j3 = 1 / i3;
  const double perDecay = gravity * (1 + mass * radius * radius * fmax(j1, fmax(j2, j3)));
  const double x = s[1], y = s[2], vx = s[3], vy = s[4], lx = s[5], ly = s[6], lz = s[7], qw = s[8], qx = s[9], qy = s[10], qz = s[11];
  double step = fmin(0.004, longest);
  for (;;) {
    int unstable = 0;
    double dx = 0, dy = 0, dvx = 0, dvy = 0, dlx = 0, dly = 0, dqw = 0, dqx = 0, dqy = 0, dqz = 0;
    double sx = 0, sy = 0, svx = 0, svy = 0, slx = 0, sly = 0, sqw = 0, sqx = 0, sqy = 0, sqz = 0, sliding = 0, rollingP = 0;
    for (int stage = 0; stage < 4; stage++) {
      double ahead = stage == 0 ? 0 : stage == 3 ? step : 0.5 * step, weight = stage == 0 || stage == 3 ? 1 : 2;
      double pvx = vx + ahead * dvx, pvy = vy + ahead * dvy, plx = lx + ahead * dlx, ply = ly + ahead * dly;
      double w = qw + ahead * dqw, i = qx + ahead * dqx, j = qy + ahead * dqy, k = qz + ahead * dqz, n = 1 / (w * w + i * i + j * j + k * k);
      double a11 = (w * w + i * i - j * j - k * k) * n, a12 = 2 * (i * j - w * k) * n, a13 = 2 * (i * k + w * j) * n;
      double a21 = 2 * (i * j + w * k) * n, a22 = (w * w - i * i + j * j - k * k) * n, a23 = 2 * (j * k - w * i) * n;
      double a31 = 2 * (i * k - w * j) * n, a32 = 2 * (j * k + w * i) * n, a33 = (w * w - i * i - j * j + k * k) * n;
      double b1 = j1 * (a11 * plx + a21 * ply + a31 * lz), b2 = j2 * (a12 * plx + a22 * ply + a32 * lz), b3 = j3 * (a13 * plx + a23 * ply + a33 * lz);
      double wx = a11 * b1 + a12 * b2 + a13 * b3, wy = a21 * b1 + a22 * b2 + a23 * b3, wz = a31 * b1 + a32 * b2 + a33 * b3;
      double ux = pvx - radius * wy, uy = pvy + radius * wx, slip = sqrt(ux * ux + uy * uy + e2), mu = friction(x + ahead * dx, y + ahead * dy);
      double decays = mu * perDecay / slip;
      if (stage == 0 && decays * step > 1.5) step = 1.5 / decays; else if (decays * step > 2.6) unstable = 1;
      double grip = mu * gravity / slip, drag = resist / sqrt(wx * wx + wy * wy + 1e-6);
      dx = pvx; dy = pvy; dvx = -grip * ux; dvy = -grip * uy; dlx = mass * radius * dvy - drag * wx; dly = -mass * radius * dvx - drag * wy;
      dqw = -0.5 * (wx * i + wy * j + wz * k); dqx = 0.5 * (wx * w + wy * k - wz * j); dqy = 0.5 * (-wx * k + wy * w + wz * i); dqz = 0.5 * (wx * j - wy * i + wz * w);
      sx += weight * dx; sy += weight * dy; svx += weight * dvx; svy += weight * dvy; slx += weight * dlx; sly += weight * dly;
      sqw += weight * dqw; sqx += weight * dqx; sqy += weight * dqy; sqz += weight * dqz;
      sliding += weight * mass * grip * (ux * ux + uy * uy); rollingP += weight * drag * (wx * wx + wy * wy);
    }
    if (unstable) { step *= 0.25; continue; }
    double sixth = step / 6, nw = qw + sixth * sqw, ni = qx + sixth * sqx, nj = qy + sixth * sqy, nk = qz + sixth * sqz, norm = 1 / sqrt(nw * nw + ni * ni + nj * nj + nk * nk);
    s[0] += step; s[1] = x + sixth * sx; s[2] = y + sixth * sy; s[3] = vx + sixth * svx; s[4] = vy + sixth * svy; s[5] = lx + sixth * slx; s[6] = ly + sixth * sly;
    s[8] = nw * norm; s[9] = ni * norm; s[10] = nj * norm; s[11] = nk * norm; s[12] += sixth * sliding; s[13] += sixth * rollingP;
    return step;
  }
}

static double full(const double *start) {
  double s[14], before[14];
  memcpy(s, start, sizeof s);
  while (s[2] < until - 1e-12 && s[0] < 12 && s[4] > 0) {
    memcpy(before, s, sizeof s);
    double step = fullStep(s, 0.004);
    if (s[2] > until) {
      double length = step * (until - before[2]) / (s[2] - before[2]);
      for (int i = 0; i < 6; i++) {
        memcpy(s, before, sizeof s);
        double taken = fullStep(s, length), miss = s[2] - until;
        if (fabs(miss) < 1e-12 || taken < length) break;
        length -= miss / s[4];
      }
    }
  }
  return s[1];
}

int main(int argc, char **argv) {
  if (argc != 4) return 2;
  FILE *f = fopen(argv[1], "rb");
  double head[7], rest[24];
  if (!f || fread(head, 8, 7, f) != 7) return 2;
  columns = head[0]; rows = head[1]; cellX = head[2]; cellY = head[3]; firstX = head[4]; filmStep = head[5];
  int table = head[6], cells = columns * rows;
  law = malloc(8 * table); met = malloc(8 * cells);
  if (fread(law, 8, table, f) != (size_t)table || fread(met, 8, cells, f) != (size_t)cells || fread(rest, 8, 23, f) != 23) return 2;
  mass = rest[0]; radius = rest[1]; i1 = rest[2]; i2 = rest[3]; i3 = rest[4]; kappa = rest[5]; rolling = rest[6]; epsilon = rest[7]; gravity = rest[8];
  const double *at = rest + 9;
  until = at[6];
  int count = atoi(argv[3]), isFull = argv[2][0] == 'f';
  double longest = (argv[2][0] == 's' ? 2 : 0.5) * 0.3048;
  double sum = 0;
  struct timespec a, b;
  clock_gettime(CLOCK_MONOTONIC, &a);
  for (int n = 0; n < count; n++) {
    double x = at[0] + 1e-4 * (n % 100);
    if (isFull) {
      double s[14] = {0, x, 0, at[1], at[2], at[11], at[12], at[13], at[7], at[8], at[9], at[10], 0, 0};
      sum += full(s);
    } else sum += averaged(longest, x, at[1], at[2], at[3], at[4]);
  }
  clock_gettime(CLOCK_MONOTONIC, &b);
  printf("%.9f %.12g\n", (b.tv_sec - a.tv_sec) + 1e-9 * (b.tv_nsec - a.tv_nsec), sum);
  return 0;
}
