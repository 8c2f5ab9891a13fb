/* The number that the figures are made in: double, or float with -DIN_FLOAT. */

#ifndef RKO_FIGURES_NUMBER_H
#define RKO_FIGURES_NUMBER_H

#ifdef IN_FLOAT
typedef float number;
#define N(literal) literal##f
#define NAMED(name) name##_f32
#define EXP expf
#define ERFC erfcf
#define LOG logf
#define FABS fabsf
#else
typedef double number;
#define N(literal) literal
#define NAMED(name) name
#define EXP exp
#define ERFC erfc
#define LOG log
#define FABS fabs
#endif

#endif
