/* The same computations twice: by the library, and as a careful programmer would write them for this one meter and part. */

#ifndef RKO_FIGURES_CALLS_H
#define RKO_FIGURES_CALLS_H

#include <stddef.h>
#include <stdint.h>

#include "number.h"

/* The part: 4.7 kohm, 5 %. The meter's span: 20 kohm in steps of 10 ohm, shown in kohm, 0.8 % of the reading + 3 counts, which
 * are its greatest error. The display scatters by 3 ohm. The rule: a risk of 5 % at each limit. */
#define LOWER_OHM N(4465.0)
#define UPPER_OHM N(4935.0)
#define FULL_SCALE_OHM N(20000.0)
#define STEP_OHM N(10.0)
#define UNIT_OHM N(1000.0)
#define FRACTION N(0.008)
#define COUNTS N(3.0)
#define SCATTER_OHM N(3.0)
#define RISK N(0.05)

/* 1 conforms, 2 does not conform, 3 undecided; 4 over-range, 5 no reading. Written: the probability that it conforms. */
enum { CONFORMS = 1, DOES_NOT_CONFORM = 2, UNDECIDED = 3, OVER_RANGE = 4, NO_READING = 5 };

int ours_check(void);
void ours_set_up_thermistor(void);
uint32_t ours_read_and_judge(const char *text, size_t length, number *probability);
number ours_normal_above(number z);
number ours_temperature_c(number ohm);
number ours_nearest_in_e12(number ohm);

uint32_t by_hand_read_and_judge(const char *text, size_t length, number *probability);
number by_hand_normal_above(number z);
number by_hand_temperature_c(number ohm);
number by_hand_nearest_in_e12(number ohm);

#endif
