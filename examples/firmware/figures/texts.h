/* What the display shows of eight parts: below the limits, at the lower one, inside, at the upper one, beyond it. */

#ifndef RKO_FIGURES_TEXTS_H
#define RKO_FIGURES_TEXTS_H

enum { TEXTS = 8, TEXT_LENGTH = 4 };
static const char texts[TEXTS][TEXT_LENGTH + 1] = {"4.31", "4.46", "4.53", "4.70", "4.82", "4.88", "4.93", "5.10"};

#endif
