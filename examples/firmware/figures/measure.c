/* Instructions and stack of each computation, by the library and by hand. A line each: name, instructions and stack of ours, of
 * the one by hand. Counted a call at a time; the mean of the instructions and the most of the stack over eight inputs. */

#include <math.h>

#include "board.h"
#include "calls.h"
#include "texts.h"

static int at, differ;
static volatile number given, found;
static number probability, other_probability;
static volatile uint32_t answer;

static const number z[TEXTS] = {N(-2.0), N(-0.3), N(0.1), N(0.7), N(1.6), N(2.2), N(3.5), N(5.0)};
static const number thermistor_ohm[TEXTS] = {N(1500.0), N(3000.0), N(5000.0),  N(8000.0),
                                             N(9874.0), N(9999.0), N(10000.0), N(7000.0)};
static const number part_ohm[TEXTS] = {N(0.51), N(4.9), N(130.0), N(999.0), N(4880.0), N(36000.0), N(470000.0), N(2.1e6)};

static void ours_judges(void) {
    answer = ours_read_and_judge(texts[at], TEXT_LENGTH, &probability);
}
static void by_hand_judges(void) {
    answer = by_hand_read_and_judge(texts[at], TEXT_LENGTH, &other_probability);
}

#define ONE(name, function)                                                                                            \
    static void name(void) {                                                                                           \
        found = function(given);                                                                                       \
    }
ONE(ours_tail, ours_normal_above)
ONE(by_hand_tail, by_hand_normal_above)
ONE(ours_celsius, ours_temperature_c)
ONE(by_hand_celsius, by_hand_temperature_c)
ONE(ours_nearest, ours_nearest_in_e12)
ONE(by_hand_nearest, by_hand_nearest_in_e12)

static void say_number(uint32_t count) {
    char digits[12];
    char *to = digits + sizeof digits;
    *--to = '\0';
    do {
        *--to = (char)('0' + count % 10);
        count /= 10;
    } while (count > 0);
    board_write(to);
}

static void of(void (*call)(void), uint32_t *instructions, uint32_t *stack) {
    const uint32_t deep = board_stack_of(call);
    *instructions += board_instructions_of(call);
    *stack = deep > *stack ? deep : *stack;
}

static void figure(const char *name, void (*ours)(void), void (*by_hand)(void), const number *inputs) {
    uint32_t ours_instructions = 0, ours_stack = 0, by_hand_instructions = 0, by_hand_stack = 0;
    for (at = 0; at < TEXTS; ++at) {
        number first;
        uint32_t judged;
        given = inputs == NULL ? N(0.0) : inputs[at];
        of(ours, &ours_instructions, &ours_stack);
        first = inputs == NULL ? probability : found;
        judged = answer;
        of(by_hand, &by_hand_instructions, &by_hand_stack);
        /* The two compute the same thing, or the comparison says nothing. */
        if (answer != judged ||
            FABS(first - (inputs == NULL ? other_probability : found)) > N(1e-4) * (N(1.0) + FABS(first))) {
            differ = 1;
            board_write("not the same: ");
        }
    }
    board_write(name);
    board_write("\t");
    say_number((ours_instructions + TEXTS / 2) / TEXTS);
    board_write("\t");
    say_number(ours_stack);
    board_write("\t");
    say_number((by_hand_instructions + TEXTS / 2) / TEXTS);
    board_write("\t");
    say_number(by_hand_stack);
    board_write("\n");
}

int main(void) {
    if (!ours_check()) {
        differ = 1;
        board_write("not what the library makes: the constants of ours.c\n");
    }
    ours_set_up_thermistor();
    figure("read, estimate, judge", ours_judges, by_hand_judges, NULL);
    figure("normal tail", ours_tail, by_hand_tail, z);
    figure("thermistor's temperature", ours_celsius, by_hand_celsius, thermistor_ohm);
    figure("nearest value of E12", ours_nearest, by_hand_nearest, part_ohm);
    return differ;
}
