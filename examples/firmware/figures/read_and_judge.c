/* A whole image that does nothing but read, estimate and judge, by the library or (-DBY_HAND) by hand: its size is what counts.
 * The exit code says that all answers came. */

#include "calls.h"
#include "texts.h"

int main(void) {
    uint32_t seen = 0;
    number probability;
    int i;
    for (i = 0; i < TEXTS; ++i) {
#ifdef BY_HAND
        seen |= 1u << by_hand_read_and_judge(texts[i], TEXT_LENGTH, &probability);
#else
        seen |= 1u << ours_read_and_judge(texts[i], TEXT_LENGTH, &probability);
#endif
    }
    return seen != (1u << CONFORMS | 1u << DOES_NOT_CONFORM | 1u << UNDECIDED);
}
