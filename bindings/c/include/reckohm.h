/*
 * reckohm.h: resistive parts measured, stated with an honest uncertainty, and judged.
 *
 * Made by `cargo xtask header` from bindings/c/src: do not edit. This header is the manual of the C door.
 *
 * Rules that hold for every function
 *   Answer     A status: RKO_OK (0), or the number of what went wrong (listed below). Outputs come after inputs and are
 *              untouched unless the answer is RKO_OK.
 *   Detail     The last argument may be null. Otherwise every call writes it: all zero after a success, else what was
 *              given, what is allowed and where. rko_detail_text makes a sentence of it (host libraries).
 *   Pointers   Null is answered with RKO_NULL_POINTER unless the item says that it may be null; the array arguments of
 *              a call with a count of 0 may be null. What is not null must be aligned and point to as many elements as
 *              the call says. Outputs must not overlap inputs or each other.
 *   Codes      Choices are whole numbers of fixed width with named constants; any other number is RKO_UNKNOWN_CODE.
 *   Flags      A member or argument called `has_...` or a flag is 0 or a sum of the listed bits.
 *   Texts in   Bytes and their number, no closing zero needed. A text error's detail has the byte as its `index`.
 *   Texts out  UTF-8 with a closing zero, or nothing at all and RKO_BUFFER_TOO_SMALL.
 *   Arrays     Functions ending in _n do what the one without it does, element by element. With `valid` null the first
 *              bad element is the answer, the detail has its index and how many failed, and nothing is written. With
 *              `valid` an array of one byte an element the answer is RKO_OK, each byte says 1 for good or 0 for bad, bad
 *              elements of the outputs are untouched, and the detail tells the first bad one and how many failed.
 *   Structs    Plain and owned by the caller; none ever grows. Members called `reserved` must be 0.
 *   Numbers    No NaN is accepted and none is given. Resistances are in ohm, temperatures in degrees Celsius, differences
 *              in kelvin, tolerances and probabilities fractions (0.05 for 5 %). Results have the same bits on every
 *              processor and through every door; keep it so in your own code with -ffp-contract=off, round to nearest
 *              and no flush to zero.
 *   Float      Structs and functions whose name ends in _f32 are the twins in float of those without it, with the same
 *              members, arguments, ranges and statuses. They compute in float alone: of double there is nothing but the
 *              members of a detail. Each number is rounded once, to float, where the twin rounds it to double.
 *   Threads    Every function may be called from any thread at any time. There is no locale, and no state but the limit of
 *              rko_limit_threads. A host library splits calls on large arrays over the cores and takes some heap for
 *              that; nothing else does. Arrays may be split as you like: the results are the same.
 *
 * Caution: measure only parts that are disconnected and discharged. Hot filaments burn, and no meter goes across a person
 * or an energised circuit. Follow local codes, and leave mains work to licensed people.
 *
 * Licence: MIT OR Apache-2.0.
 */

#ifndef RECKOHM_H
#define RECKOHM_H

#include <stddef.h>
#include <stdint.h>

/* Statuses, the same numbers at every door. */

/** A number outside its legal range; the range row says which and what is allowed. */
#define RKO_OUT_OF_RANGE 1

/** A NaN, or an infinity where a finite number is needed. */
#define RKO_NOT_FINITE 2

/** Nothing given where at least one is needed. */
#define RKO_EMPTY 3

/** Two arguments that contradict one another. */
#define RKO_CONTRADICTION 4

/** The result is beyond what the number type can hold. */
#define RKO_RESULT_OUT_OF_RANGE 5

/** A condition was given without the coefficient or value that it needs. */
#define RKO_MISSING_ARGUMENT 6

/** More items than a fixed capacity holds, or arrays of different lengths. */
#define RKO_WRONG_COUNT 7

/** A byte that cannot stand where it stands in a text; the index is its offset. */
#define RKO_UNEXPECTED_BYTE 20

/** A text ends where a digit is needed; the index is the offset. */
#define RKO_MISSING_DIGITS 21

/** A text with more bytes than are read. */
#define RKO_TEXT_TOO_LONG 22

/** A null pointer where memory is needed; the argument's position, from 1, says which. Only the C door has it. */
#define RKO_NULL_POINTER 90

/** A whole number that stands for none of the named choices. Only the C door has it. */
#define RKO_UNKNOWN_CODE 91

/** A text or list that does not fit into the room given for it. Only the C door has it. */
#define RKO_BUFFER_TOO_SMALL 92

/** Memory of the library's own that was never filled by it, or was changed from outside since. Only the C door has it. */
#define RKO_CORRUPT_MEMORY 93

/** Arithmetic that is not as the results need it: rounded otherwise, or numbers near zero flushed. Only the C door has it. */
#define RKO_WRONG_ARITHMETIC 94

/** A name that is not that of a series of preferred values. */
#define RKO_UNKNOWN_SERIES 100

/** A display text without its point. */
#define RKO_MISSING_POINT 200

/** A display text with fewer digits behind the point than the span shows. */
#define RKO_TOO_FEW_DECIMALS 201

/** A display text with more digits behind the point than the span shows. */
#define RKO_TOO_MANY_DECIMALS 202

/** A display text with more digits in front of the point than the span has. */
#define RKO_TOO_MANY_DIGITS 203

/** A value that is at or beyond the span's full scale. */
#define RKO_BEYOND_FULL_SCALE 204

/** A display text that is no multiple of the span's step. */
#define RKO_OFF_GRID 205

/** A display text that may mean two things on this span. */
#define RKO_AMBIGUOUS_TEXT 206

/** An over-range mark that the span does not have. */
#define RKO_MARK_NOT_OF_SPAN 207

/** A reply that stands for no reading. */
#define RKO_NO_READING 210

/** A reply that is neither a reading nor a defined mark. */
#define RKO_UNDEFINED_MARK 211

/** A step that no display has. */
#define RKO_UNKNOWN_RESOLUTION 220

/** A unit that no display shows in. */
#define RKO_UNKNOWN_DISPLAY_UNIT 221

/** Bits that stand for no over-range mark. */
#define RKO_UNKNOWN_MARKS 222

/** A part that is beyond every span of the meter. */
#define RKO_NO_SPAN_HOLDS 230

/** An index that belongs to no span of the meter. */
#define RKO_NO_SUCH_SPAN 231

/** A conductor that is not in the table. */
#define RKO_WIRE_NOT_IN_TABLE 240

/** A word that is no colour; the index is where it begins. */
#define RKO_UNKNOWN_COLOUR 101

/** A colour that cannot stand in its place. */
#define RKO_MISPLACED_COLOUR 102

/** A code of the wrong form. */
#define RKO_WRONG_FORM 103

/** A code on which sources disagree, or of which none could be read. */
#define RKO_DOUBTFUL_CODE 104

/** A value that no marking of this form says. */
#define RKO_NO_SUCH_MARKING 105

/** A reading beyond the span was given where a value is needed. */
#define RKO_OVER_RANGE_READING 300

/** A value outside the domain of a sensor's model. */
#define RKO_OUTSIDE_DOMAIN 450

/** A parameter of a fit that the points do not determine; the index says which, counted from 0. */
#define RKO_UNDETERMINED 500

/** A fit whose parameters still moved when it had to stop. */
#define RKO_NOT_SETTLED 501

/** A model that gives no finite number where a fit begins; the index is that of the point. */
#define RKO_MODEL_NOT_FINITE 502

/*
 * Ranges: the `row` of a detail, what it is of, what is allowed, and the source.
 *
 *    1  probability: (0, 1) (JCGM 106 3.1)
 *    2  degrees of freedom: (0, inf] (JCGM 100 G.3)
 *    3  number: any finite number (our rule: no infinity and no NaN enters)
 *    4  resistance: (0, 1e15] ohm (our rule: beyond it is insulation, not a resistance)
 *    5  tolerance: (0, 1) (IEC 60062)
 *  200  full scale of a span: (0, 1e15] ohm (our rule: beyond it is insulation, not a resistance)
 *  201  resolution of a span: [1e-9, 1e12] ohm (our rule)
 *  202  full scale of a span over its resolution: [10, 1e9] (our rule: two digits to nine)
 *  203  fraction in an accuracy clause: [0, 1) (our rule)
 *  204  counts in an accuracy clause: [0, 1000000] (our rule)
 *  205  coverage factor: (0, 10] (JCGM 100 6.3)
 *  206  temperature of the meter: [-60, 120] degree Celsius (our rule)
 *  207  temperature coefficient of an accuracy clause: [0, 1] per kelvin (our rule)
 *  208  length of one lead: (0, 100000] m (our rule)
 *  209  hysteresis of an auto-ranger: [0.001, 0.9] (our rule)
 *  210  measured resistance: any finite number ohm (our rule: no infinity and no NaN enters)
 *  100  marked temperature coefficient: [1, 10000] ppm/K (IEC 60062)
 *   10  standardised value: any finite number (our rule: no infinity and no NaN enters)
 *   11  argument of the gamma function: (0, 2.5e305] (our rule: beyond it the logarithm of the gamma function is larger than any double)
 *   12  parameter of the beta function: (0, 1e9] (our rule: as far as it was tried)
 *   13  argument of the beta function: [0, 1] (Abramowitz and Stegun 26.5)
 *  350  standard uncertainty: [0, inf) (JCGM 100 2.3.1)
 *  351  half-width of a rectangular part: [0, inf) (JCGM 100 4.3.7)
 *  352  degrees of freedom of a type A part: [1, inf] (JCGM 100 4.2.6)
 *  353  width of a one-sided part: [0, inf) (our rule)
 *  354  coverage probability: (0, 1) (JCGM 100 6.2.2)
 *  355  probability of one tail: (0, 0.5] (JCGM 106 7.3)
 *  300  repeatability: [0, inf) ohm (JCGM 100 4.2.4)
 *  301  resistance of a parallel path: (0, inf) ohm (our rule)
 *  302  known temperature coefficient: [-1000000, 1000000] ppm/K (our rule)
 *  303  limit of the temperature coefficient: [0, 1000000] ppm/K (IEC 60062)
 *  304  temperature of the part: [-273.15, 3500] degree Celsius (physics: absolute zero; tungsten melts at about 3422)
 *  400  risk of a wrong verdict: (0, 0.5) (JCGM 106 8.3)
 *  450  temperature of a thermistor: [-200, 1000] degree Celsius (our rule: as far as the formulas were tried)
 *  451  B-value: [100, 20000] K (our rule: most thermistors have 2000 to 6000)
 *  452  resistance of a sensor at an end of its domain: [1e-6, 1e15] ohm (our rule: beyond it is a short or insulation, not a sensor)
 *  453  parameter of a sensor, or an end of its domain: any finite number (our rule: no infinity and no NaN enters)
 *  454  temperature of a platinum thermometer: [-200, 850] degree Celsius (IEC 60751)
 *  455  coefficient A of a platinum thermometer: [0.001, 0.01] per kelvin (our rule: IEC 60751 has 0.0039083)
 *  456  tolerance of a platinum thermometer at 0 degree Celsius: [0, 5] K (our rule: IEC 60751 has 0.1 to 0.6)
 *  457  growth of the tolerance of a platinum thermometer: [0, 0.02] K a kelvin (our rule: IEC 60751 has 0.0017 to 0.01)
 *  500  number of a point to be fitted: any finite number (our rule: no infinity and no NaN enters)
 *  501  standard uncertainty of y of a point: (0, inf) (JCGM 100 2.3.1)
 *  502  standard uncertainty of x of a point: [0, inf) (JCGM 100 2.3.1)
 *  503  weight of a point: (0, inf) (our rule)
 *  504  standard uncertainty of an error that all points share: [0, inf) (JCGM 100 F.1.2.4)
 *  505  parameter at which a fit begins: any finite number (our rule: no infinity and no NaN enters)
 *  506  bound of a parameter: [-inf, inf] (our rule)
 */


/*
 In a detail: numbers of double precision near zero are flushed to it.
 */
#define RKO_ARITHMETIC_FLUSHED 1

/*
 In a detail: numbers of single precision near zero are flushed to it.
 */
#define RKO_ARITHMETIC_FLUSHED_F32 2

/*
 In a detail: results of double precision are rounded other than to the nearest.
 */
#define RKO_ARITHMETIC_ROUNDED 3

/*
 In a detail: results of single precision are rounded other than to the nearest.
 */
#define RKO_ARITHMETIC_ROUNDED_F32 4

/*
 In a detail: a subtraction of double precision has a wrong last digit.
 */
#define RKO_ARITHMETIC_SUBTRACTED 5

/*
 The usual hysteresis of an auto-ranger, as a fraction of the lower span's full scale; common practice.
 */
#define RKO_HYSTERESIS_BY_CONVENTION 0.05

/*
 The usual widest hysteresis of an auto-ranger; a convention.
 */
#define RKO_WIDEST_HYSTERESIS_BY_CONVENTION 0.5

/*
 Do not use this reading, the input is still settling; measure again on this span.
 */
#define RKO_RANGER_AGAIN 1

/*
 Put the meter on the span given and measure there; this reading is not the one to use.
 */
#define RKO_RANGER_SWITCH 2

/*
 Use this reading; no span shows it better.
 */
#define RKO_RANGER_ACCEPT 3

/*
 The reading is beyond the highest span: open, or not for this meter.
 */
#define RKO_RANGER_BEYOND_HIGHEST 4

/*
 The reading is less than one step of the lowest span: a short, or not for this meter. It may be used as a value.
 */
#define RKO_RANGER_BELOW_LOWEST 5

/*
 Of the spans that show every conforming part, this has the least expanded uncertainty.
 */
#define RKO_OUTCOME_CHOSEN 1

/*
 A conforming part at the upper limit would be over-range here.
 */
#define RKO_OUTCOME_OVER_RANGE 2

/*
 The expanded uncertainty here is wider than the chosen span's.
 */
#define RKO_OUTCOME_WIDER 3

/*
 Stay on this span.
 */
#define RKO_STEP_STAY 1

/*
 Go up to the span given.
 */
#define RKO_STEP_UP 2

/*
 Go down to the span given.
 */
#define RKO_STEP_DOWN 3

/*
 The resistance is beyond the highest span.
 */
#define RKO_STEP_BEYOND_HIGHEST 4

/*
 Of `one_for_all` in the functions on columns: `u` points to one number that holds for all elements.
 */
#define RKO_ONE_U 1

/*
 Of `one_for_all`: so does `dof`.
 */
#define RKO_ONE_DOF 2

/*
 Of `one_for_all`: so does `rectangular`.
 */
#define RKO_ONE_RECTANGULAR 4

/*
 The version of this binary interface. It grows with every change that a compiled caller would feel.
 */
#define RKO_ABI_VERSION 1

/*
 The leads were read with their tips touching.
 */
#define RKO_LEADS_FROM_READING 1

/*
 The leads were reckoned from their wire.
 */
#define RKO_LEADS_FROM_WIRE 2

/*
 IEC 62:1974.
 */
#define RKO_EDITION_1974 1974

/*
 IEC 60062:2004, also EN 60062:2005.
 */
#define RKO_EDITION_2004 2004

/*
 IEC 60062:2016.
 */
#define RKO_EDITION_2016 2016

/*
 The code of gold; those of the colours that are digits are these digits, black 0 to white 9.
 */
#define RKO_COLOUR_GOLD 10

/*
 The code of silver.
 */
#define RKO_COLOUR_SILVER 11

/*
 The code of pink.
 */
#define RKO_COLOUR_PINK 12

/*
 No scheme is named: a multiplier letter on which makers disagree is refused.
 */
#define RKO_CHIP_SCHEME_NONE 0

/*
 R is 10^-1 and S 10^-2, as in military lists.
 */
#define RKO_CHIP_SCHEME_MILITARY 1

/*
 R is 10^-2, S 10^-1 and H 10^1, as in the common list.
 */
#define RKO_CHIP_SCHEME_COMMON_LIST 2

/*
 G is 10^6 and H 10^7.
 */
#define RKO_CHIP_SCHEME_LARGE_VALUES 3

/*
 Two figures and a multiplier, or R as the point.
 */
#define RKO_CHIP_FORM_THREE_CHARACTERS 1

/*
 Three figures and a multiplier, or R as the point.
 */
#define RKO_CHIP_FORM_FOUR_CHARACTERS 2

/*
 A two-digit code of the 1 % series and a multiplier letter.
 */
#define RKO_CHIP_FORM_CODE_AND_LETTER 3

/*
 The marking says its tolerance.
 */
#define RKO_MARKING_HAS_TOLERANCE 1

/*
 The marking says its temperature coefficient.
 */
#define RKO_MARKING_HAS_TCR 2

/*
 The bands say nothing in this direction.
 */
#define RKO_DOUBT_DOES_NOT_DECODE 1

/*
 It would begin with gold or silver, which stand at the end.
 */
#define RKO_DOUBT_TOLERANCE_COLOUR_FIRST 2

/*
 The value is in no series of preferred values.
 */
#define RKO_DOUBT_IN_NO_SERIES 4

/*
 The tolerance is unusual for so many bands.
 */
#define RKO_DOUBT_UNUSUAL_TOLERANCE 8

/*
 Neither direction is more plausible.
 */
#define RKO_DIRECTION_NEITHER 0

/*
 The direction in which the bands were given.
 */
#define RKO_DIRECTION_FORWARD 1

/*
 The other direction.
 */
#define RKO_DIRECTION_BACKWARD 2

/*
 The leads are taken off.
 */
#define RKO_SETUP_LEADS 1

/*
 A path in parallel is taken off.
 */
#define RKO_SETUP_PARALLEL_PATH 2

/*
 The temperature coefficient is known, and corrects; needs `RKO_SETUP_TEMPERATURE`.
 */
#define RKO_SETUP_KNOWN_TCR 4

/*
 The temperature coefficient has a marked limit, and widens; needs `RKO_SETUP_TEMPERATURE`.
 */
#define RKO_SETUP_TCR_LIMIT 8

/*
 The temperature of the part and its reference temperature are given; needs a coefficient.
 */
#define RKO_SETUP_TEMPERATURE 16

/*
 The temperature of the meter is given.
 */
#define RKO_SETUP_METER_TEMPERATURE 32

/*
 The standard deviation of single readings is known from before.
 */
#define RKO_SETUP_REPEATABILITY 64

/*
 The fixed part of the meter's error is the same in the readings of part and leads.
 */
#define RKO_SETUP_ZERO_ERROR_COMMON 128

/*
 It is independent between them. With neither bit the wider of the two is taken; both are a contradiction of codes.
 */
#define RKO_SETUP_ZERO_ERROR_INDEPENDENT 256

/*
 How many rows a measurement has room for.
 */
#define RKO_ROWS_MOST 8

/*
 How many pieces of advice a measurement has room for.
 */
#define RKO_ADVICE_MOST 8

/*
 The value alone decides (JCGM 106 8.2): two answers, and half of the parts at a limit are judged wrongly.
 */
#define RKO_RULE_SIMPLE_ACCEPTANCE 1

/*
 A guard band at each limit by itself (JCGM 106 8.3).
 */
#define RKO_RULE_GUARDED 2

/*
 The probability of being outside either limit is bounded.
 */
#define RKO_RULE_MAX_RISK 3

/*
 Over-range is shown as a lone "1" at the left.
 */
#define RKO_MARK_ONE_ALONE 1

/*
 Over-range is shown as "OL" in any of its spellings.
 */
#define RKO_MARK_OL 2

/*
 Over-range is shown by blank digits.
 */
#define RKO_MARK_BLANK 4

/*
 Over-range is shown by dashes.
 */
#define RKO_MARK_DASHES 8

/*
 The clause is an expanded uncertainty with the coverage factor given, not a limit.
 */
#define RKO_SPAN_COVERAGE 1

/*
 The rounding by the display's step comes on top of the counts.
 */
#define RKO_SPAN_STEP_OUTSIDE_COUNTS 2

/*
 The clause has a temperature coefficient.
 */
#define RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT 4

/*
 The clause holds only after the meter was zeroed with its leads shorted.
 */
#define RKO_SPAN_ZEROING_REQUIRED 8

/*
 The most spans that one call takes.
 */
#define RKO_SPANS_MOST 16

/*
 Bytes that hold every text of this library with its closing zero.
 */
#define RKO_TEXT_CAPACITY 1024

/*
 The part conforms at the agreed risk.
 */
#define RKO_ANSWER_CONFORMS 1

/*
 The part does not conform at the agreed risk.
 */
#define RKO_ANSWER_DOES_NOT_CONFORM 2

/*
 The measurement cannot tell at the agreed risk.
 */
#define RKO_ANSWER_UNDECIDED 3

/*
 The value lies within the limits, or at one.
 */
#define RKO_SIDE_INSIDE 1

/*
 The value lies beyond a limit.
 */
#define RKO_SIDE_OUTSIDE 2

/*
 Nothing more to do: the answer stands.
 */
#define RKO_NEXT_STEP_NONE 1

/*
 Take more readings: their scatter keeps the answer open.
 */
#define RKO_NEXT_STEP_REPEAT 2

/*
 Use a span or meter with a tighter clause, or compare with a known part.
 */
#define RKO_NEXT_STEP_TIGHTER_METER 3

/*
 Take away what pushes the reading to one side (leakage, a body across the part).
 */
#define RKO_NEXT_STEP_REMOVE_ONE_SIDED 4

/*
 The verdict has a guard band; without this bit no value can meet the rule.
 */
#define RKO_VERDICT_HAS_GUARD_BAND 1

/*
 The verdict has acceptance limits; without this bit no value can conform.
 */
#define RKO_VERDICT_HAS_ACCEPTANCE 2

/*
 The verdict has a test uncertainty ratio; there is none for a single limit or an exact value.
 */
#define RKO_VERDICT_HAS_TUR 4

/*
 What a function answers: `RKO_OK`, or the number of what went wrong.
 */
typedef int32_t rko_status;

/*
 A failure as plain numbers.

 Every function takes a pointer to one as its last argument, which may be null. When it is not, each call writes it:
 all zero after a success, so that it never speaks of an earlier call. Fields that a failure does not use are 0.
 `rko_detail_text` turns it into a sentence.
 */
struct rko_detail {
  /*
   What was given, in the unit of the argument it speaks of.
   */
  double given;
  /*
   The lower end of what is allowed.
   */
  double lower;
  /*
   The upper end of what is allowed.
   */
  double upper;
  /*
   Where, from 0: the element of an array, the byte of a text, the band of a marking.
   */
  uint64_t index;
  /*
   How many elements of the array failed in all; 0 outside arrays.
   */
  uint64_t failed;
  /*
   What went wrong: the status. In a call with a mask it is that of the first bad element.
   */
  int32_t status;
  /*
   The number of the range concerned, as listed at the head of this file; 0 if none.
   */
  uint16_t row;
  /*
   Which of several arguments or cases; for a null pointer the position of the argument, from 1.
   */
  uint16_t argument;
};

/*
 One setting of a meter, with what its display can show there and how good it is.

 `rko_span_new` fills one with the usual conditions; change members afterwards, and see them checked by `rko_span_check`
 or by any call that takes the span.
 */
struct rko_span {
  /*
   The first value in ohm that the display no longer shows: 2000 for 2000 counts of 1 ohm. In (0, 1e15].
   */
  double full_scale_ohm;
  /*
   The step of the last digit in ohm: 1, 2 or 5 times a power of ten.
   */
  double resolution_ohm;
  /*
   The unit that the display shows in, in ohm: 0.001, 1, 1e3, 1e6 or 1e9.
   */
  double display_unit_ohm;
  /*
   The part of the accuracy clause that grows with the reading, a fraction in [0, 1).
   */
  double fraction_of_reading;
  /*
   The part that is a fraction of full scale, in [0, 1).
   */
  double fraction_of_span;
  /*
   The part in counts, multiples of the resolution, in [0, 1e6].
   */
  double accuracy_counts;
  /*
   The coverage factor of the clause, in (0, 10]; read only with `RKO_SPAN_COVERAGE`.
   */
  double coverage_factor;
  /*
   The lowest meter temperature at which the clause holds as it stands, degrees Celsius, in [-60, 120].
   */
  double temperature_lower_c;
  /*
   The highest one.
   */
  double temperature_upper_c;
  /*
   How much wider the clause is, as a part of itself, for each kelvin outside, in [0, 1]; read only with
   `RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT`.
   */
  double temperature_coefficient_per_kelvin;
  /*
   How over-range is shown: a sum of `RKO_MARK_...`.
   */
  uint32_t marks;
  /*
   A sum of `RKO_SPAN_...`.
   */
  uint32_t flags;
  /*
   What stands beside the meter's knob: 1 to 15 bytes of UTF-8 and a closing zero.
   */
  char label[16];
};

/*
 An auto-ranger: the state machine that finds the span for each reading. Its content is the library's own, with room to
 spare; every call sees whether it is as the last one left it. It may be copied as a whole, stored, and used again by the
 same build of the library.
 */
struct rko_auto_ranger {
  /*
   Not for reading or writing.
   */
  uint64_t opaque[64];
};

/*
 `rko_span` for `float`: the members mean the same.
 */
struct rko_span_f32 {
  float full_scale_ohm;
  float resolution_ohm;
  float display_unit_ohm;
  float fraction_of_reading;
  float fraction_of_span;
  float accuracy_counts;
  float coverage_factor;
  float temperature_lower_c;
  float temperature_upper_c;
  float temperature_coefficient_per_kelvin;
  uint32_t marks;
  uint32_t flags;
  char label[16];
};

/*
 `rko_auto_ranger` for `float`.
 */
struct rko_auto_ranger_f32 {
  /*
   Not for reading or writing.
   */
  uint64_t opaque[32];
};

/*
 One reading on one span.
 */
struct rko_reading {
  /*
   The resistance in ohm, with its sign. Of an over-range reading it is the span's full scale, a bound that the
   resistance lies beyond and not its value.
   */
  double ohm;
  /*
   How many display steps it is, with its sign; 0 for a reply over the wire and for over-range.
   */
  int64_t counts;
  /*
   1 if the resistance is beyond the span: there is no value. Else 0.
   */
  uint32_t over;
  /*
   1 if a minus was shown; legal on a short, and not distinguishable from zero. Else 0.
   */
  uint32_t negative;
};

/*
 `rko_reading` for `float`: the members mean the same.
 */
struct rko_reading_f32 {
  float ohm;
  int64_t counts;
  uint32_t over;
  uint32_t negative;
};

/*
 What one span would make of a part.
 */
struct rko_assessment {
  /*
   What a part of exactly the nominal value shows, in ohm; the full scale where it is over-range.
   */
  double expected_ohm;
  /*
   The expanded uncertainty in ohm, at a coverage probability of 0.95, of one reading of the nominal value, from the
   meter alone.
   */
  double expanded_ohm;
  /*
   Test uncertainty ratio: the width of the tolerance over that of the coverage interval.
   */
  double tur;
  /*
   The probability that a part that reads exactly the nominal value conforms.
   */
  double conformance_probability_at_centre;
  /*
   How many times as wide as the chosen span's the expanded uncertainty is; 0 unless `RKO_OUTCOME_WIDER`.
   */
  double wider_factor;
  /*
   What is shown, in steps of the display; the full scale's where it is over-range.
   */
  int64_t counts_used;
  /*
   1 if every part up to the upper limit is shown, else 0.
   */
  uint32_t holds;
  /*
   1 if a part can be accepted here at a risk of 5 %, else 0.
   */
  uint32_t accepts_some;
  /*
   `RKO_OUTCOME_CHOSEN`, `RKO_OUTCOME_OVER_RANGE` or `RKO_OUTCOME_WIDER`.
   */
  uint32_t outcome;
  /*
   0.
   */
  uint32_t reserved;
  /*
   What a part of exactly the nominal value shows, with a closing zero.
   */
  char expected_display[32];
};

/*
 Limits of a resistance, both included. An infinite end is left open; at least one is finite.
 */
struct rko_limits {
  /*
   The lower end in ohm; minus infinity leaves it open.
   */
  double lower_ohm;
  /*
   The upper end in ohm; infinity leaves it open.
   */
  double upper_ohm;
};

/*
 `rko_limits` for `float`: the members mean the same.
 */
struct rko_limits_f32 {
  float lower_ohm;
  float upper_ohm;
};

/*
 A decision rule, agreed before the measurement (ISO/IEC 17025 7.8.6).
 */
struct rko_rule {
  /*
   The agreed risk, in (0, 0.5); 0 and not read for simple acceptance.
   */
  double risk;
  /*
   `RKO_RULE_SIMPLE_ACCEPTANCE`, `RKO_RULE_GUARDED` or `RKO_RULE_MAX_RISK`.
   */
  uint32_t kind;
  /*
   Must be 0.
   */
  uint32_t reserved;
};

/*
 What a verdict answers, without what else it shows.
 */
struct rko_decision {
  /*
   The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
   taken where they make it smallest.
   */
  double conformance_probability;
  /*
   `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
   */
  uint32_t answer;
  /*
   Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
   */
  uint32_t side;
};

/*
 `rko_rule` for `float`: the members mean the same.
 */
struct rko_rule_f32 {
  float risk;
  uint32_t kind;
  uint32_t reserved;
};

/*
 `rko_decision` for `float`: the members mean the same.
 */
struct rko_decision_f32 {
  float conformance_probability;
  uint32_t answer;
  uint32_t side;
};

/*
 A value with the shape of its uncertainty, all in one unit.

 Where a meter's accuracy clause dominates, the error is rectangular, not normal, and no fixed factor of u is right:
 intervals and verdicts come from these parts. A struct of zeros but for its `value` is an exact value.
 */
struct rko_estimate {
  /*
   The value.
   */
  double value;
  /*
   Half-widths of up to two rectangular parts, 0 or more: a meter's clause, the step of a display.
   */
  double rectangular[2];
  /*
   Standard uncertainty of all normal parts together, 0 or more.
   */
  double normal_u;
  /*
   Up to two type A parts: the standard deviation of a mean, 0 or more.
   */
  double type_a_s[2];
  /*
   Their degrees of freedom, 1 or more, infinite allowed; not read where `type_a_s` is 0, and infinite there in results.
   */
  double type_a_dof[2];
  /*
   How far below the value the true one may lie for a one-sided reason, 0 or more.
   */
  double below;
  /*
   How far above the value the true one may lie for a one-sided reason (leakage, a body across), 0 or more.
   */
  double above;
};

/*
 `rko_estimate` for `float`: the members mean the same.
 */
struct rko_estimate_f32 {
  float value;
  float rectangular[2];
  float normal_u;
  float type_a_s[2];
  float type_a_dof[2];
  float below;
  float above;
};

/*
 An expanded uncertainty with all that it takes to be read, in the unit of its estimate.
 */
struct rko_expanded {
  /*
   U, the half-width without the one-sided parts.
   */
  double half_width;
  /*
   k = U/u, for information; 0 if u is 0.
   */
  double coverage_factor;
  /*
   The probability that the interval is to hold.
   */
  double coverage_probability;
  /*
   Lower end of the coverage interval, the one-sided part included.
   */
  double lower;
  /*
   Upper end of the coverage interval, the one-sided part included.
   */
  double upper;
  /*
   u, the combined standard uncertainty.
   */
  double u;
};

/*
 `rko_expanded` for `float`: the members mean the same.
 */
struct rko_expanded_f32 {
  float half_width;
  float coverage_factor;
  float coverage_probability;
  float lower;
  float upper;
  float u;
};

/*
 The leads between meter and part. Made by `rko_leads_from_reading` or `rko_leads_from_wire`; the members tell what they
 were made from, and `ohm` and `half_width_ohm` what that comes to: these two are not read again.
 */
struct rko_leads {
  /*
   Resistance of the leads, there and back, ohm.
   */
  double ohm;
  /*
   Half-width of what is known about it, ohm; a reading's is that of its span, and 0 here.
   */
  double half_width_ohm;
  /*
   Length of one lead, metre, if from its wire, else 0.
   */
  double length_m;
  /*
   Cross-section, square millimetre, if from its wire, else 0.
   */
  double area_mm2;
  /*
   The reading, if from one.
   */
  struct rko_reading reading;
  /*
   The span that the reading was taken on, if from a reading.
   */
  struct rko_span span;
  /*
   `RKO_LEADS_FROM_READING` or `RKO_LEADS_FROM_WIRE`.
   */
  uint32_t source;
  /*
   Class of the conductor, 1, 2 or 5, if from its wire, else 0.
   */
  uint32_t wire_class;
};

/*
 What a resistor is marked as.
 */
struct rko_marking {
  /*
   Nominal value in ohm; 0 for a zero-ohm link.
   */
  double nominal_ohm;
  /*
   Tolerance, a fraction; read only with `RKO_MARKING_HAS_TOLERANCE`, else 0.
   */
  double tolerance;
  /*
   Temperature coefficient in ppm/K, plus or minus, a limit; read only with `RKO_MARKING_HAS_TCR`, else 0.
   */
  uint32_t tcr_ppm_per_kelvin;
  /*
   A sum of `RKO_MARKING_HAS_...`.
   */
  uint32_t has;
};

/*
 The bands of a resistor in reading order.
 */
struct rko_bands {
  /*
   Colours: 0 to 9 as digits, `RKO_COLOUR_GOLD`, `RKO_COLOUR_SILVER`, `RKO_COLOUR_PINK`; 0 beyond `count`.
   */
  uint8_t colours[6];
  /*
   How many bands, 1 to 6.
   */
  uint8_t count;
  /*
   0.
   */
  uint8_t reserved;
};

/*
 One reading direction of a row of bands.
 */
struct rko_band_reading {
  /*
   What the bands say; all zero unless `status` is `RKO_OK`.
   */
  struct rko_marking marking;
  /*
   The bands in this direction.
   */
  struct rko_bands bands;
  /*
   `RKO_OK`, or why the bands say nothing in this direction.
   */
  int32_t status;
  /*
   A sum of `RKO_DOUBT_...`; 0 if nothing speaks against it.
   */
  uint32_t doubts;
};

/*
 Both reading directions of a row of bands.
 */
struct rko_both_ways {
  /*
   As the bands were given.
   */
  struct rko_band_reading forward;
  /*
   From the other end.
   */
  struct rko_band_reading backward;
  /*
   `RKO_DIRECTION_NEITHER`, `RKO_DIRECTION_FORWARD` or `RKO_DIRECTION_BACKWARD`.
   */
  uint32_t more_plausible;
  /*
   0.
   */
  uint32_t reserved;
};

/*
 The conditions of a measurement. What `flags` does not name is not there and not read.
 */
struct rko_setup {
  /*
   Coverage probability of the expanded uncertainty, in (0, 1); `rko_setup_new` makes it 0.95.
   */
  double coverage_probability;
  /*
   Standard deviation of single readings known from before, ohm.
   */
  double repeatability_ohm;
  /*
   Marked limit of the temperature coefficient, ppm/K, 0 to 1e6.
   */
  double tcr_limit_ppm_per_kelvin;
  /*
   Reference temperature of the nominal value, degrees Celsius.
   */
  double reference_temperature_c;
  /*
   Temperature of the meter, degrees Celsius.
   */
  double meter_temperature_c;
  /*
   Path in parallel with the part, ohm, above 0.
   */
  struct rko_estimate parallel_path_ohm;
  /*
   Known temperature coefficient, ppm/K.
   */
  struct rko_estimate known_tcr_ppm_per_kelvin;
  /*
   Temperature of the part, degrees Celsius.
   */
  struct rko_estimate temperature_c;
  /*
   The leads.
   */
  struct rko_leads leads;
  /*
   A sum of `RKO_SETUP_...`.
   */
  uint32_t flags;
  /*
   Must be 0.
   */
  uint32_t reserved;
};

/*
 One row of a budget.
 */
struct rko_row {
  /*
   Value of the input, in its unit.
   */
  double value;
  /*
   Half-width of a rectangular input, else its standard uncertainty, in its unit.
   */
  double width;
  /*
   How much the result changes with the input, ohm per its unit.
   */
  double sensitivity;
  /*
   Contribution to the standard uncertainty, ohm.
   */
  double u_ohm;
  /*
   Part of the variance, 0 to 1.
   */
  double share;
  /*
   Degrees of freedom; infinite where they are not from repeats.
   */
  double dof;
  /*
   What it is: 1 scatter of the readings, 2 accuracy clause of the meter, 3 step of the display, 4 leads, 5 parallel path,
   6 known temperature coefficient, 7 limit of the temperature coefficient, 8 temperature of the part.
   */
  uint32_t contribution;
  /*
   1 normal, 2 rectangular, 3 Student t, 4 several parts.
   */
  uint32_t distribution;
};

/*
 One piece of advice.
 */
struct rko_advice {
  /*
   Part of the variance that it is about.
   */
  double share;
  /*
   Expanded uncertainty as it is, ohm.
   */
  double expanded_now_ohm;
  /*
   Expanded uncertainty that following the advice would bring, ohm.
   */
  double expanded_then_ohm;
  /*
   1 what dominates, 2 the scatter is unknown, 3 more readings, 4 another span, 5 the leads are not taken off, 6 four
   wires, 7 substitution, 8 disconnect the parallel path, 9 nearer to the reference temperature.
   */
  uint32_t kind;
  /*
   The contribution that it is about, as in `rko_row`.
   */
  uint32_t contribution;
  /*
   How many readings, or the index of the span, from 0; else 0.
   */
  uint32_t number;
  /*
   0.
   */
  uint32_t reserved;
};

/*
 A measured part: the estimate, the budget behind it, and what would make it better.
 */
struct rko_measurement {
  /*
   The resistance in ohm, with the shape of its uncertainty.
   */
  struct rko_estimate estimate;
  /*
   Its expanded uncertainty.
   */
  struct rko_expanded expanded;
  /*
   Effective degrees of freedom by the Welch-Satterthwaite formula, for information.
   */
  double effective_dof;
  /*
   How many readings it was made from.
   */
  uint64_t readings;
  /*
   The budget, `row_count` rows; all zero beyond.
   */
  struct rko_row rows[RKO_ROWS_MOST];
  /*
   The advice, `advice_count` pieces, the most useful first; all zero beyond.
   */
  struct rko_advice advice[RKO_ADVICE_MOST];
  /*
   How many rows.
   */
  uint32_t row_count;
  /*
   How many pieces of advice.
   */
  uint32_t advice_count;
  /*
   1 if the readings agreed so well that their scatter was taken as 0.3 of the display's step each, else 0.
   */
  uint32_t scatter_at_floor;
  /*
   0.
   */
  uint32_t reserved;
};

/*
 A span with everything worked out that a reading asks of it, for processors on which each instruction counts.

 `rko_span_prepare` fills one. Its numbers never change: firmware may hold them as constants that a program on the desk
 has printed, and then links nothing of what checks a span. It is taken as it stands; one that something has written over
 gives `RKO_CORRUPT_MEMORY`, or readings of another span.
 */
struct rko_prepared_span {
  /*
   The part of the accuracy clause that grows with the reading, as a fraction of it.
   */
  double fraction_of_reading;
  /*
   What the accuracy clause comes to at a reading of 0, in ohm.
   */
  double fixed_ohm;
  /*
   By what factor the clause is wider at the meter's temperature: 1 within its band.
   */
  double widening;
  /*
   The first value in ohm that the display no longer shows.
   */
  double full_scale_ohm;
  /*
   The same in steps of the display.
   */
  uint32_t full_scale_counts;
  /*
   The step is so many times a power of ten: 1, 2 or 5.
   */
  uint8_t step_digits;
  /*
   That power of ten, of ohm.
   */
  int8_t step_power;
  /*
   The power of ten of the display's unit, of ohm.
   */
  int8_t unit_power;
  /*
   The power of ten of the first digit of the largest value shown, of ohm.
   */
  int8_t leading_power;
  /*
   How over-range is shown: a sum of `RKO_MARK_...`.
   */
  uint32_t marks;
  /*
   Must be 0.
   */
  uint32_t reserved;
};

/*
 `rko_prepared_span` for `float`: the members mean the same.
 */
struct rko_prepared_span_f32 {
  float fraction_of_reading;
  float fixed_ohm;
  float widening;
  float full_scale_ohm;
  uint32_t full_scale_counts;
  uint8_t step_digits;
  int8_t step_power;
  int8_t unit_power;
  int8_t leading_power;
  uint32_t marks;
  uint32_t reserved;
};

/*
 A thermistor by its rated resistance and B-value: R = R_N·exp(B·(1/T - 1/T_N)), with the resistance R at zero power and T
 in kelvin. `rko_b_value_thermistor_new` fills it; its members are for reading. It may be copied, and stored by a program
 that is linked with the same library.

 Source: IEC 60539-1.
 */
struct rko_b_value_thermistor {
  /*
   R_N, the rated zero-power resistance, ohm.
   */
  double rated_ohm;
  /*
   T_N, the temperature of the rated resistance, degrees Celsius.
   */
  double rated_temperature_c;
  /*
   B, the B-value, kelvin.
   */
  double b_kelvin;
  /*
   The first of the two temperatures that the B-value belongs to, degrees Celsius: 25 of B25/85.
   */
  double b_first_c;
  /*
   The second of them, degrees Celsius.
   */
  double b_second_c;
  /*
   The lower end of the domain, degrees Celsius.
   */
  double lower_c;
  /*
   The upper end of the domain, degrees Celsius.
   */
  double upper_c;
  /*
   The resistance at the warm end of the domain, ohm.
   */
  double lowest_ohm;
  /*
   The resistance at the cold end of the domain, ohm.
   */
  double highest_ohm;
};

/*
 `rko_b_value_thermistor` for `float`: the members mean the same.
 */
struct rko_b_value_thermistor_f32 {
  float rated_ohm;
  float rated_temperature_c;
  float b_kelvin;
  float b_first_c;
  float b_second_c;
  float lower_c;
  float upper_c;
  float lowest_ohm;
  float highest_ohm;
};

/*
 A thermistor by its Steinhart-Hart coefficients: 1/T = a + b·L + c·L² + d·L³ with L = ln(R/R_ref), R the resistance at zero
 power and T in kelvin. `rko_steinhart_hart_three_terms` or `rko_steinhart_hart_four_terms` fills it; its members are for
 reading. It may be copied, and stored by a program that is linked with the same library.

 Source: Steinhart and Hart, Deep-Sea Research 15 (1968) 497.
 */
struct rko_steinhart_hart {
  /*
   a, 1/K.
   */
  double a;
  /*
   b, the coefficient of L, 1/K.
   */
  double b;
  /*
   c, the coefficient of L², 1/K; 0 with three terms.
   */
  double c;
  /*
   d, the coefficient of L³, 1/K.
   */
  double d;
  /*
   R_ref, ohm.
   */
  double reference_ohm;
  /*
   The lower end of the domain, degrees Celsius.
   */
  double lower_c;
  /*
   The upper end of the domain, degrees Celsius.
   */
  double upper_c;
  /*
   The resistance at the warm end of the domain, ohm.
   */
  double lowest_ohm;
  /*
   The resistance at the cold end of the domain, ohm.
   */
  double highest_ohm;
};

/*
 `rko_steinhart_hart` for `float`: the members mean the same.
 */
struct rko_steinhart_hart_f32 {
  float a;
  float b;
  float c;
  float d;
  float reference_ohm;
  float lower_c;
  float upper_c;
  float lowest_ohm;
  float highest_ohm;
};

/*
 A verdict and what it rests on.
 */
struct rko_verdict {
  /*
   The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
   taken where they make it smallest.
   */
  double conformance_probability;
  /*
   How far inside a limit a value must lie to conform, ohm; read it only if `has` says so, else 0.
   */
  double guard_band_ohm;
  /*
   The lowest value that conforms, ohm; minus infinity without a lower limit; read it only if `has` says so, else 0.
   */
  double acceptance_lower_ohm;
  /*
   The highest value that conforms, ohm; infinity without an upper limit; read it only if `has` says so, else 0.
   */
  double acceptance_upper_ohm;
  /*
   How far the value lies from the nearest limit, ohm.
   */
  double distance_ohm;
  /*
   Test uncertainty ratio, (upper limit - lower limit)/(2 U) at a coverage probability of 0.95; read it only if `has`
   says so, else 0.
   */
  double tur;
  /*
   The rule that gave the answer.
   */
  struct rko_rule rule;
  /*
   `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
   */
  uint32_t answer;
  /*
   Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
   */
  uint32_t side;
  /*
   What to do next: one of `RKO_NEXT_STEP_...`.
   */
  uint32_t next_step;
  /*
   A sum of `RKO_VERDICT_HAS_...`.
   */
  uint32_t has;
};

/*
 `rko_verdict` for `float`: the members mean the same.
 */
struct rko_verdict_f32 {
  float conformance_probability;
  float guard_band_ohm;
  float acceptance_lower_ohm;
  float acceptance_upper_ohm;
  float distance_ohm;
  float tur;
  struct rko_rule_f32 rule;
  uint32_t answer;
  uint32_t side;
  uint32_t next_step;
  uint32_t has;
};

/*
 The function did what it was asked for, and its outputs are written.
 */
#define RKO_OK 0

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/*
 Whether the arithmetic is as every result of this library needs it: IEEE 754, rounded to the nearest, numbers near zero kept.
 A program that sets its processor up otherwise, or is linked with another double-precision arithmetic, gets other
 digits, and is told so here. Ask once after the start, and on each thread that changes the rounding.

 Given: nothing.
 Statuses: `RKO_WRONG_ARITHMETIC`; the detail's `argument` is one of `RKO_ARITHMETIC_...`, `given` what came out and
 `lower` what it has to be.
 Source: IEEE 754-2019, 4.3.1 and 7.5.
 */
rko_status rko_arithmetic_check(struct rko_detail *detail);

/*
 Fills an auto-ranger.

 Over-range goes up one span at a time. A reading that, with its accuracy clause, is below a lower span's full scale by the
 hysteresis goes straight to the lowest such span. Each time that turns out wrong the hysteresis doubles, up to the widest,
 so that a reading that wobbles about the end of a span does not switch for ever; once the readings have left the
 neighbourhood of that end, by the widest hysteresis, it is as at first.

 Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `start`, the span to begin on,
 from 0: `count - 1` is the gentlest; `discard`, how many readings are discarded after each switch while the input settles;
 `hysteresis`, a fraction in [0.001, 0.9], usually `RKO_HYSTERESIS_BY_CONVENTION`; `widest_hysteresis`, as much or more,
 usually `RKO_WIDEST_HYSTERESIS_BY_CONVENTION`.
 Written: `ranger`.
 Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION` (order of the spans, or the widest hysteresis is less),
 `RKO_WRONG_COUNT`, `RKO_NO_SUCH_SPAN`, `RKO_NULL_POINTER`.
 */
rko_status rko_auto_ranger_init(const struct rko_span *spans,
                                size_t count,
                                size_t start,
                                uint32_t discard,
                                double hysteresis,
                                double widest_hysteresis,
                                struct rko_auto_ranger *ranger,
                                struct rko_detail *detail);

/*
 `rko_auto_ranger_init` for `float`.
 */
rko_status rko_auto_ranger_init_f32(const struct rko_span_f32 *spans,
                                    size_t count,
                                    size_t start,
                                    uint32_t discard,
                                    float hysteresis,
                                    float widest_hysteresis,
                                    struct rko_auto_ranger_f32 *ranger,
                                    struct rko_detail *detail);

/*
 Takes in a reading on the span that was asked for, and says what to do.

 Given: `ranger`, which goes on by one step; `reading`, of which `ohm` and `over` are read.
 Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
 Statuses: `RKO_CORRUPT_MEMORY`; `RKO_BEYOND_FULL_SCALE` and `RKO_CONTRADICTION` for a reading of another span;
 `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
 */
rko_status rko_auto_ranger_step(struct rko_auto_ranger *ranger,
                                const struct rko_reading *reading,
                                uint32_t *action,
                                size_t *next,
                                struct rko_detail *detail);

/*
 `rko_auto_ranger_step` for `float`.
 */
rko_status rko_auto_ranger_step_f32(struct rko_auto_ranger_f32 *ranger,
                                    const struct rko_reading_f32 *reading,
                                    uint32_t *action,
                                    size_t *next,
                                    struct rko_detail *detail);

/*
 Takes in a resistance measured on the span that was asked for, and says what to do. At or beyond the span's full scale it
 is over-range: give the full scale where there is no value.

 Given: `ranger`, which goes on by one step; `ohm`, finite.
 Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
 Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
 */
rko_status rko_auto_ranger_step_ohm(struct rko_auto_ranger *ranger,
                                    double ohm,
                                    uint32_t *action,
                                    size_t *next,
                                    struct rko_detail *detail);

/*
 `rko_auto_ranger_step_ohm` for `float`.
 */
rko_status rko_auto_ranger_step_ohm_f32(struct rko_auto_ranger_f32 *ranger,
                                        float ohm,
                                        uint32_t *action,
                                        size_t *next,
                                        struct rko_detail *detail);

/*
 Begins anew for another part: what was learnt of the last one is forgotten, and no readings are discarded.

 Given: `ranger`; `index`, the span to begin on, from 0.
 Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NO_SUCH_SPAN`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
 */
rko_status rko_auto_ranger_restart(struct rko_auto_ranger *ranger, size_t index, struct rko_detail *detail);

/*
 `rko_auto_ranger_restart` for `float`.
 */
rko_status rko_auto_ranger_restart_f32(struct rko_auto_ranger_f32 *ranger, size_t index, struct rko_detail *detail);

/*
 The span of a meter for a part: of the spans that show every conforming part, the one with the least expanded
 uncertainty; and what every span would make of the part.

 Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `nominal_ohm`, in (0, 1e15];
 `tolerance`, a fraction in (0, 1); `meter_temperature_c`, or null for a meter within its temperature band.
 Written: `assessments`, `count` of them; `chosen`, the index of the chosen span, from 0.
 Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION` (order of the spans), `RKO_WRONG_COUNT`,
 `RKO_NO_SPAN_HOLDS`, `RKO_MISSING_ARGUMENT`, `RKO_NULL_POINTER`.
 */
rko_status rko_meter_choose(const struct rko_span *spans,
                            size_t count,
                            double nominal_ohm,
                            double tolerance,
                            const double *meter_temperature_c,
                            struct rko_assessment *assessments,
                            size_t *chosen,
                            struct rko_detail *detail);

/*
 The next span after a reading: up after over-range, down where a lower span shows it as well, else stay.

 Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `index`, the span that the
 reading was taken on, from 0; `reading`.
 Written: `step`, one of `RKO_STEP_...`; `next`, the index of the span to go to, `index` itself for the others.
 Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_WRONG_COUNT`, `RKO_NO_SUCH_SPAN`,
 `RKO_BEYOND_FULL_SCALE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 */
rko_status rko_meter_next_span(const struct rko_span *spans,
                               size_t count,
                               size_t index,
                               const struct rko_reading *reading,
                               uint32_t *step,
                               size_t *next,
                               struct rko_detail *detail);

/*
 `rko_meter_next_span` for `float`.
 */
rko_status rko_meter_next_span_f32(const struct rko_span_f32 *spans,
                                   size_t count,
                                   size_t index,
                                   const struct rko_reading_f32 *reading,
                                   uint32_t *step,
                                   size_t *next,
                                   struct rko_detail *detail);

/*
 The probability that the true value lies within the limits for each of `count` measurements in columns, as
 `rko_conformance_probability` has it for the estimate of one. It is by far the quickest way to many.

 Given: `value`, in ohm; `u`, standard uncertainties in ohm, null for none; `dof`, degrees of freedom of these, null or
 infinite for normal parts; `rectangular`, half-widths in ohm of one rectangular part each, a meter's accuracy clause
 say, null for none; `one_for_all`, a sum of `RKO_ONE_...`: which of the three point to one number for all; `limits`.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: JCGM 106 7.
 */
rko_status rko_columns_conformance_probability_n(const double *value,
                                                 const double *u,
                                                 const double *dof,
                                                 const double *rectangular,
                                                 uint32_t one_for_all,
                                                 size_t count,
                                                 const struct rko_limits *limits,
                                                 double *probability,
                                                 uint8_t *valid,
                                                 struct rko_detail *detail);

/*
 `rko_columns_conformance_probability_n` for `float`.
 */
rko_status rko_columns_conformance_probability_n_f32(const float *value,
                                                     const float *u,
                                                     const float *dof,
                                                     const float *rectangular,
                                                     uint32_t one_for_all,
                                                     size_t count,
                                                     const struct rko_limits_f32 *limits,
                                                     float *probability,
                                                     uint8_t *valid,
                                                     struct rko_detail *detail);

/*
 The decision on each of `count` measurements in columns, as `rko_judge_answer` has it for the estimate of one.

 Given: the columns as of `rko_columns_conformance_probability_n`; `limits` and `rule`, the same for all.
 Written: `decisions`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: JCGM 106, ISO 14253-1.
 */
rko_status rko_columns_judge_answer_n(const double *value,
                                      const double *u,
                                      const double *dof,
                                      const double *rectangular,
                                      uint32_t one_for_all,
                                      size_t count,
                                      const struct rko_limits *limits,
                                      const struct rko_rule *rule,
                                      struct rko_decision *decisions,
                                      uint8_t *valid,
                                      struct rko_detail *detail);

/*
 `rko_columns_judge_answer_n` for `float`.
 */
rko_status rko_columns_judge_answer_n_f32(const float *value,
                                          const float *u,
                                          const float *dof,
                                          const float *rectangular,
                                          uint32_t one_for_all,
                                          size_t count,
                                          const struct rko_limits_f32 *limits,
                                          const struct rko_rule_f32 *rule,
                                          struct rko_decision_f32 *decisions,
                                          uint8_t *valid,
                                          struct rko_detail *detail);

/*
 The version of the binary interface that the library was built with. A program compares it with `RKO_ABI_VERSION`
 of the header that it was compiled with, and does not go on when they differ.

 Returns: the version, a whole number from 1.
 */
uint32_t rko_abi_version(void);

/*
 The probability that a standard normal value is below `z`; 0 where it is below the smallest number of its type.

 Given: `z`, any finite number.
 Written: `probability`.
 Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.2.
 */
rko_status rko_normal_below(double z, double *probability, struct rko_detail *detail);

/*
 `rko_normal_below` for `float`.
 */
rko_status rko_normal_below_f32(float z, float *probability, struct rko_detail *detail);

/*
 `rko_normal_below` for each of `count` values.
 */
rko_status rko_normal_below_n(const double *z,
                              size_t count,
                              double *probability,
                              uint8_t *valid,
                              struct rko_detail *detail);

/*
 `rko_normal_below_n` for `float`.
 */
rko_status rko_normal_below_n_f32(const float *z,
                                  size_t count,
                                  float *probability,
                                  uint8_t *valid,
                                  struct rko_detail *detail);

/*
 The probability that a standard normal value is above `z`, to full relative accuracy in its tail.

 Given: `z`, any finite number.
 Written: `probability`.
 Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.2.
 */
rko_status rko_normal_above(double z, double *probability, struct rko_detail *detail);

/*
 `rko_normal_above` for `float`.
 */
rko_status rko_normal_above_f32(float z, float *probability, struct rko_detail *detail);

/*
 `rko_normal_above` for each of `count` values.
 */
rko_status rko_normal_above_n(const double *z,
                              size_t count,
                              double *probability,
                              uint8_t *valid,
                              struct rko_detail *detail);

/*
 `rko_normal_above_n` for `float`.
 */
rko_status rko_normal_above_n_f32(const float *z,
                                  size_t count,
                                  float *probability,
                                  uint8_t *valid,
                                  struct rko_detail *detail);

/*
 The value that a standard normal value is below with probability `p`.

 Given: `p`, more than 0 and less than 1.
 Written: `quantile`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.2.
 */
rko_status rko_normal_quantile(double p, double *quantile, struct rko_detail *detail);

/*
 `rko_normal_quantile` for `float`.
 */
rko_status rko_normal_quantile_f32(float p, float *quantile, struct rko_detail *detail);

/*
 `rko_normal_quantile` for each of `count` values.
 */
rko_status rko_normal_quantile_n(const double *p,
                                 size_t count,
                                 double *quantile,
                                 uint8_t *valid,
                                 struct rko_detail *detail);

/*
 `rko_normal_quantile_n` for `float`.
 */
rko_status rko_normal_quantile_n_f32(const float *p,
                                     size_t count,
                                     float *quantile,
                                     uint8_t *valid,
                                     struct rko_detail *detail);

/*
 The value that a standard normal value is above with probability `p`: take it for a small risk.

 Given: `p`, more than 0 and less than 1.
 Written: `quantile`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.2.
 */
rko_status rko_normal_quantile_above(double p, double *quantile, struct rko_detail *detail);

/*
 `rko_normal_quantile_above` for `float`.
 */
rko_status rko_normal_quantile_above_f32(float p, float *quantile, struct rko_detail *detail);

/*
 `rko_normal_quantile_above` for each of `count` values.
 */
rko_status rko_normal_quantile_above_n(const double *p,
                                       size_t count,
                                       double *quantile,
                                       uint8_t *valid,
                                       struct rko_detail *detail);

/*
 `rko_normal_quantile_above_n` for `float`.
 */
rko_status rko_normal_quantile_above_n_f32(const float *p,
                                           size_t count,
                                           float *quantile,
                                           uint8_t *valid,
                                           struct rko_detail *detail);

/*
 The probability that a value of Student's t is below `t`.

 Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.7.
 */
rko_status rko_t_below(double t, double dof, double *probability, struct rko_detail *detail);

/*
 `rko_t_below` for `float`.
 */
rko_status rko_t_below_f32(float t, float dof, float *probability, struct rko_detail *detail);

/*
 `rko_t_below` for each of `count` values, all with the same degrees of freedom.
 */
rko_status rko_t_below_n(const double *t,
                         size_t count,
                         double dof,
                         double *probability,
                         uint8_t *valid,
                         struct rko_detail *detail);

/*
 `rko_t_below_n` for `float`.
 */
rko_status rko_t_below_n_f32(const float *t,
                             size_t count,
                             float dof,
                             float *probability,
                             uint8_t *valid,
                             struct rko_detail *detail);

/*
 The probability that a value of Student's t is above `t`, to full relative accuracy in its tail.

 Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.7.
 */
rko_status rko_t_above(double t, double dof, double *probability, struct rko_detail *detail);

/*
 `rko_t_above` for `float`.
 */
rko_status rko_t_above_f32(float t, float dof, float *probability, struct rko_detail *detail);

/*
 `rko_t_above` for each of `count` values, all with the same degrees of freedom.
 */
rko_status rko_t_above_n(const double *t,
                         size_t count,
                         double dof,
                         double *probability,
                         uint8_t *valid,
                         struct rko_detail *detail);

/*
 `rko_t_above_n` for `float`.
 */
rko_status rko_t_above_n_f32(const float *t,
                             size_t count,
                             float dof,
                             float *probability,
                             uint8_t *valid,
                             struct rko_detail *detail);

/*
 The value that Student's t is below with probability `p`.

 Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
 Written: `quantile`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
 number of its type), `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.7.
 */
rko_status rko_t_quantile(double p, double dof, double *quantile, struct rko_detail *detail);

/*
 `rko_t_quantile` for `float`.
 */
rko_status rko_t_quantile_f32(float p, float dof, float *quantile, struct rko_detail *detail);

/*
 `rko_t_quantile` for each of `count` values, all with the same degrees of freedom.
 */
rko_status rko_t_quantile_n(const double *p,
                            size_t count,
                            double dof,
                            double *quantile,
                            uint8_t *valid,
                            struct rko_detail *detail);

/*
 `rko_t_quantile_n` for `float`.
 */
rko_status rko_t_quantile_n_f32(const float *p,
                                size_t count,
                                float dof,
                                float *quantile,
                                uint8_t *valid,
                                struct rko_detail *detail);

/*
 The value that Student's t is above with probability `p`: take it for a small risk.

 Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
 Written: `quantile`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
 number of its type), `RKO_NULL_POINTER`.
 Source: Abramowitz and Stegun 26.7.
 */
rko_status rko_t_quantile_above(double p, double dof, double *quantile, struct rko_detail *detail);

/*
 `rko_t_quantile_above` for `float`.
 */
rko_status rko_t_quantile_above_f32(float p, float dof, float *quantile, struct rko_detail *detail);

/*
 `rko_t_quantile_above` for each of `count` values, all with the same degrees of freedom.
 */
rko_status rko_t_quantile_above_n(const double *p,
                                  size_t count,
                                  double dof,
                                  double *quantile,
                                  uint8_t *valid,
                                  struct rko_detail *detail);

/*
 `rko_t_quantile_above_n` for `float`.
 */
rko_status rko_t_quantile_above_n_f32(const float *p,
                                      size_t count,
                                      float dof,
                                      float *quantile,
                                      uint8_t *valid,
                                      struct rko_detail *detail);

/*
 An estimate from a value and its standard uncertainty.

 Given: `value`, finite; `u`, 0 or more; `dof`, degrees of freedom, 1 or more: infinite makes a normal part, else a type A
 part.
 Written: `estimate`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100.
 */
rko_status rko_estimate_new(double value,
                            double u,
                            double dof,
                            struct rko_estimate *estimate,
                            struct rko_detail *detail);

/*
 `rko_estimate_new` for `float`.
 */
rko_status rko_estimate_new_f32(float value,
                                float u,
                                float dof,
                                struct rko_estimate_f32 *estimate,
                                struct rko_detail *detail);

/*
 The mean of repeated observations, with the standard deviation of the mean as a type A part.

 Given: `observations`, finite, and their `count`, 2 or more.
 Written: `mean`.
 Statuses: `RKO_WRONG_COUNT` for fewer than two, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 4.2.3.
 */
rko_status rko_estimate_from_repeats(const double *observations,
                                     size_t count,
                                     struct rko_estimate *mean,
                                     struct rko_detail *detail);

/*
 `rko_estimate_from_repeats` for `float`.
 */
rko_status rko_estimate_from_repeats_f32(const float *observations,
                                         size_t count,
                                         struct rko_estimate_f32 *mean,
                                         struct rko_detail *detail);

/*
 Effective degrees of freedom of a sum of parts, by the Welch-Satterthwaite formula: not cut to a whole number, infinite
 where no part has finite ones.

 Given: `u`, the standard uncertainty of each part, 0 or more; `dof`, its degrees of freedom, 1 or more; their `count`.
 Written: `effective_dof`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 G.4.1, equation G.2b.
 */
rko_status rko_effective_dof(const double *u,
                             const double *dof,
                             size_t count,
                             double *effective,
                             struct rko_detail *detail);

/*
 `rko_effective_dof` for `float`.
 */
rko_status rko_effective_dof_f32(const float *u,
                                 const float *dof,
                                 size_t count,
                                 float *effective,
                                 struct rko_detail *detail);

/*
 The same estimate with one more rectangular part: an error that lies anywhere within plus or minus `half_width` with
 equal probability. The two widest are kept as they are; a third goes into the normal part.

 Given: `estimate`; `half_width`, 0 or more, finite.
 Written: `with_it`, which may be `estimate` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 4.3.7.
 */
rko_status rko_estimate_with_rectangular(const struct rko_estimate *estimate,
                                         double half_width,
                                         struct rko_estimate *with_it,
                                         struct rko_detail *detail);

/*
 `rko_estimate_with_rectangular` for `float`.
 */
rko_status rko_estimate_with_rectangular_f32(const struct rko_estimate_f32 *estimate,
                                             float half_width,
                                             struct rko_estimate_f32 *with_it,
                                             struct rko_detail *detail);

/*
 The same estimate with one more normal part; such parts add by variance.

 Given: `estimate`; `u`, 0 or more, finite.
 Written: `with_it`, which may be `estimate` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.2.
 */
rko_status rko_estimate_with_normal(const struct rko_estimate *estimate,
                                    double u,
                                    struct rko_estimate *with_it,
                                    struct rko_detail *detail);

/*
 `rko_estimate_with_normal` for `float`.
 */
rko_status rko_estimate_with_normal_f32(const struct rko_estimate_f32 *estimate,
                                        float u,
                                        struct rko_estimate_f32 *with_it,
                                        struct rko_detail *detail);

/*
 The same estimate with one more type A part.

 Given: `estimate`; `s`, the standard deviation of a mean, 0 or more, finite; `dof`, its degrees of freedom, 1 or more, one
 less than the number of repeats.
 Written: `with_it`, which may be `estimate` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 4.2.
 */
rko_status rko_estimate_with_type_a(const struct rko_estimate *estimate,
                                    double s,
                                    double dof,
                                    struct rko_estimate *with_it,
                                    struct rko_detail *detail);

/*
 `rko_estimate_with_type_a` for `float`.
 */
rko_status rko_estimate_with_type_a_f32(const struct rko_estimate_f32 *estimate,
                                        float s,
                                        float dof,
                                        struct rko_estimate_f32 *with_it,
                                        struct rko_detail *detail);

/*
 The same estimate with one-sided parts, such as leakage or a body across the part.

 Given: `estimate`; `below` and `above`, how far the true value may lie under and over the value, 0 or more, finite.
 Written: `with_it`, which may be `estimate` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_with_one_sided(const struct rko_estimate *estimate,
                                       double below,
                                       double above,
                                       struct rko_estimate *with_it,
                                       struct rko_detail *detail);

/*
 `rko_estimate_with_one_sided` for `float`.
 */
rko_status rko_estimate_with_one_sided_f32(const struct rko_estimate_f32 *estimate,
                                           float below,
                                           float above,
                                           struct rko_estimate_f32 *with_it,
                                           struct rko_detail *detail);

/*
 The estimate of a constant times the value: every part scaled, one-sided parts changing sides with the sign.

 Given: `estimate`; `constant`, finite.
 Written: `product`, which may be `estimate` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_times(const struct rko_estimate *estimate,
                              double constant,
                              struct rko_estimate *product,
                              struct rko_detail *detail);

/*
 `rko_estimate_times` for `float`.
 */
rko_status rko_estimate_times_f32(const struct rko_estimate_f32 *estimate,
                                  float constant,
                                  struct rko_estimate_f32 *product,
                                  struct rko_detail *detail);

/*
 The combined standard uncertainty u, for information: intervals and verdicts come from the parts.

 Given: `estimate`.
 Written: `u`, in the estimate's unit.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.2.
 */
rko_status rko_estimate_u(const struct rko_estimate *estimate, double *u, struct rko_detail *detail);

/*
 `rko_estimate_u` for `float`.
 */
rko_status rko_estimate_u_f32(const struct rko_estimate_f32 *estimate, float *u, struct rko_detail *detail);

/*
 The effective degrees of freedom by the Welch-Satterthwaite formula, for information.

 Given: `estimate`.
 Written: `dof`; infinite for an estimate without type A parts.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 G.4.1.
 */
rko_status rko_estimate_effective_dof(const struct rko_estimate *estimate, double *dof, struct rko_detail *detail);

/*
 `rko_estimate_effective_dof` for `float`.
 */
rko_status rko_estimate_effective_dof_f32(const struct rko_estimate_f32 *estimate,
                                          float *dof,
                                          struct rko_detail *detail);

/*
 The expanded uncertainty at a coverage probability: the quantile of all parts of the shape added together.

 Given: `estimate`; `coverage_probability`, in (0, 1), 0.95 by convention.
 Written: `expanded`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: our coverage rule; coverage is over meters whose error is uniform within their clause.
 */
rko_status rko_estimate_expanded(const struct rko_estimate *estimate,
                                 double coverage_probability,
                                 struct rko_expanded *expanded,
                                 struct rko_detail *detail);

/*
 `rko_estimate_expanded` for `float`.
 */
rko_status rko_estimate_expanded_f32(const struct rko_estimate_f32 *estimate,
                                     float coverage_probability,
                                     struct rko_expanded_f32 *expanded,
                                     struct rko_detail *detail);

/*
 The expanded uncertainty by effective degrees of freedom and Student's t, as published budgets state it. For comparison
 with these: it does not hold its coverage probability for few repeats.

 Given: `estimate`; `coverage_probability`, in (0, 1).
 Written: `expanded`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 Source: JCGM 100 G.4.
 */
rko_status rko_estimate_expanded_welch_satterthwaite(const struct rko_estimate *estimate,
                                                     double coverage_probability,
                                                     struct rko_expanded *expanded,
                                                     struct rko_detail *detail);

/*
 `rko_estimate_expanded_welch_satterthwaite` for `float`.
 */
rko_status rko_estimate_expanded_welch_satterthwaite_f32(const struct rko_estimate_f32 *estimate,
                                                         float coverage_probability,
                                                         struct rko_expanded_f32 *expanded,
                                                         struct rko_detail *detail);

/*
 A half-width that holds its probability for every meter within its clause, also for one at its very edge. Wider than
 that of `rko_estimate_expanded`, and made without a search.

 Given: `estimate`; `coverage_probability`, in (0, 1).
 Written: `expanded`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_expanded_guaranteed(const struct rko_estimate *estimate,
                                            double coverage_probability,
                                            struct rko_expanded *expanded,
                                            struct rko_detail *detail);

/*
 `rko_estimate_expanded_guaranteed` for `float`.
 */
rko_status rko_estimate_expanded_guaranteed_f32(const struct rko_estimate_f32 *estimate,
                                                float coverage_probability,
                                                struct rko_expanded_f32 *expanded,
                                                struct rko_detail *detail);

/*
 The distance from the value that the error exceeds, to one side, with a given probability: the guard band of a
 one-sided decision. One-sided parts are not in it.

 Given: `estimate`; `tail_probability`, in (0, 0.5].
 Written: `distance`, in the estimate's unit.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_quantile_above(const struct rko_estimate *estimate,
                                       double tail_probability,
                                       double *distance,
                                       struct rko_detail *detail);

/*
 `rko_estimate_quantile_above` for `float`.
 */
rko_status rko_estimate_quantile_above_f32(const struct rko_estimate_f32 *estimate,
                                           float tail_probability,
                                           float *distance,
                                           struct rko_detail *detail);

/*
 The probability that the true value lies above `x`, one-sided parts taken where they make it largest.

 Given: `estimate`; `x`, finite, in the estimate's unit.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_probability_above(const struct rko_estimate *estimate,
                                          double x,
                                          double *probability,
                                          struct rko_detail *detail);

/*
 `rko_estimate_probability_above` for `float`.
 */
rko_status rko_estimate_probability_above_f32(const struct rko_estimate_f32 *estimate,
                                              float x,
                                              float *probability,
                                              struct rko_detail *detail);

/*
 The probability that the true value lies below `x`, one-sided parts taken where they make it largest.

 Given: `estimate`; `x`, finite, in the estimate's unit.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
 */
rko_status rko_estimate_probability_below(const struct rko_estimate *estimate,
                                          double x,
                                          double *probability,
                                          struct rko_detail *detail);

/*
 `rko_estimate_probability_below` for `float`.
 */
rko_status rko_estimate_probability_below_f32(const struct rko_estimate_f32 *estimate,
                                              float x,
                                              float *probability,
                                              struct rko_detail *detail);

/*
 The leads as read with their tips touching one another.

 Given: `reading`, within its span; `span`, that it was taken on.
 Written: `leads`.
 Statuses: those of `rko_span_check`; `RKO_OVER_RANGE_READING`, `RKO_CONTRADICTION`, `RKO_BEYOND_FULL_SCALE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 */
rko_status rko_leads_from_reading(const struct rko_reading *reading,
                                  const struct rko_span *span,
                                  struct rko_leads *leads,
                                  struct rko_detail *detail);

/*
 The leads as reckoned from their wire, both conductors, copper at 20 degrees Celsius.

 Given: `length_m` of one lead; `area_mm2` and `wire_class`, as IEC 60228 lists them.
 Written: `leads`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_WIRE_NOT_IN_TABLE`, `RKO_NULL_POINTER`.
 Source: IEC 60228.
 */
rko_status rko_leads_from_wire(double length_m,
                               double area_mm2,
                               uint32_t wire_class,
                               struct rko_leads *leads,
                               struct rko_detail *detail);

/*
 Limits from their two ends.

 Given: `lower_ohm`, minus infinity for none; `upper_ohm`, infinity for none, not below the lower one.
 Written: `limits`.
 Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY` (both open), `RKO_CONTRADICTION` (crossed), `RKO_NULL_POINTER`.
 Source: JCGM 106 3.3.
 */
rko_status rko_limits_new(double lower_ohm, double upper_ohm, struct rko_limits *limits, struct rko_detail *detail);

/*
 `rko_limits_new` for `float`.
 */
rko_status rko_limits_new_f32(float lower_ohm,
                              float upper_ohm,
                              struct rko_limits_f32 *limits,
                              struct rko_detail *detail);

/*
 An upper limit alone: a contact, a fuse, a zero-ohm link.

 Given: `upper_ohm`, finite.
 Written: `limits`.
 Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
 */
rko_status rko_limits_at_most(double upper_ohm, struct rko_limits *limits, struct rko_detail *detail);

/*
 `rko_limits_at_most` for `float`.
 */
rko_status rko_limits_at_most_f32(float upper_ohm, struct rko_limits_f32 *limits, struct rko_detail *detail);

/*
 A lower limit alone: the dark resistance of a photoresistor.

 Given: `lower_ohm`, finite.
 Written: `limits`.
 Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
 */
rko_status rko_limits_at_least(double lower_ohm, struct rko_limits *limits, struct rko_detail *detail);

/*
 `rko_limits_at_least` for `float`.
 */
rko_status rko_limits_at_least_f32(float lower_ohm, struct rko_limits_f32 *limits, struct rko_detail *detail);

/*
 Limits around a nominal value, computed in decimals and rounded once.

 Given: `nominal_ohm`, in (0, 1e15]; `tolerance`, a fraction in (0, 1).
 Written: `limits`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 */
rko_status rko_limits_from_tolerance(double nominal_ohm,
                                     double tolerance,
                                     struct rko_limits *limits,
                                     struct rko_detail *detail);

/*
 `rko_limits_from_tolerance` for `float`.
 */
rko_status rko_limits_from_tolerance_f32(float nominal_ohm,
                                         float tolerance,
                                         struct rko_limits_f32 *limits,
                                         struct rko_detail *detail);

/*
 Whether a resistance lies within limits, both ends included.

 Given: `limits`; `ohm`, any number; NaN never lies within.
 Written: `contains`, 1 if it does, else 0.
 Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, for the limits; `RKO_NULL_POINTER`.
 */
rko_status rko_limits_contains(const struct rko_limits *limits,
                               double ohm,
                               uint8_t *contains,
                               struct rko_detail *detail);

/*
 `rko_limits_contains` for `float`.
 */
rko_status rko_limits_contains_f32(const struct rko_limits_f32 *limits,
                                   float ohm,
                                   uint8_t *contains,
                                   struct rko_detail *detail);

/*
 A marking from its bands in words or two-letter codes, with blanks, commas or dashes between.

 Given: `text` and its `length`; `edition`, `RKO_EDITION_2016` or an earlier one.
 Written: `marking`.
 Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_COLOUR`, `RKO_MISPLACED_COLOUR`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60062, IEC 60757.
 */
rko_status rko_marking_from_bands(const char *text,
                                  size_t length,
                                  uint32_t edition,
                                  struct rko_marking *marking,
                                  struct rko_detail *detail);

/*
 A marking from the codes of its bands.

 Given: `colours`, `count` codes as in `rko_bands`; `edition`.
 Written: `marking`.
 Statuses: those of `rko_marking_from_bands`; `RKO_UNKNOWN_CODE` for a colour, whose index is in the detail.
 Source: IEC 60062.
 */
rko_status rko_marking_from_band_list(const uint8_t *colours,
                                      size_t count,
                                      uint32_t edition,
                                      struct rko_marking *marking,
                                      struct rko_detail *detail);

/*
 A marking from letters and digits, such as 4K7J.

 Given: `text` and its `length`.
 Written: `marking`.
 Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_WRONG_FORM`, `RKO_DOUBTFUL_CODE`,
 `RKO_NULL_POINTER`.
 Source: IEC 60062.
 */
rko_status rko_marking_from_letters(const char *text,
                                    size_t length,
                                    struct rko_marking *marking,
                                    struct rko_detail *detail);

/*
 A marking from the print on a chip resistor, such as 472, 4701, 01C or R047.

 Given: `text` and its `length`; `scheme`, one of `RKO_CHIP_SCHEME_...`.
 Written: `marking`.
 Statuses: those of `rko_marking_from_letters`; `RKO_UNKNOWN_CODE` for a scheme.
 Source: common practice, with the reason for each doubtful letter in the text of its failure.
 */
rko_status rko_marking_from_chip(const char *text,
                                 size_t length,
                                 uint32_t scheme,
                                 struct rko_marking *marking,
                                 struct rko_detail *detail);

/*
 The marking of a part of this value; the same as filling the struct, checked.

 Given: `nominal_ohm`, in (0, 1e15]; `tolerance`, a fraction in (0, 1), or 0 for none; `tcr_ppm_per_kelvin`, 1 to 10000,
 or 0 for none.
 Written: `marking`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NO_SUCH_MARKING`, `RKO_NULL_POINTER`.
 */
rko_status rko_marking_from_value(double nominal_ohm,
                                  double tolerance,
                                  uint32_t tcr_ppm_per_kelvin,
                                  struct rko_marking *marking,
                                  struct rko_detail *detail);

/*
 The limits that a marking sets, exact and rounded once.

 Given: `marking`.
 Written: `limits`.
 Statuses: `RKO_MISSING_ARGUMENT` without a tolerance and for a zero-ohm link; `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 */
rko_status rko_marking_limits(const struct rko_marking *marking, struct rko_limits *limits, struct rko_detail *detail);

/*
 The bands that say a marking.

 Given: `marking`; `edition`.
 Written: `bands`.
 Statuses: `RKO_NO_SUCH_MARKING` for what bands cannot say; those of `rko_marking_limits`.
 Source: IEC 60062.
 */
rko_status rko_marking_to_bands(const struct rko_marking *marking,
                                uint32_t edition,
                                struct rko_bands *bands,
                                struct rko_detail *detail);

/*
 The letters and digits that say a marking.

 Given: `marking`; `buffer`, of `capacity` bytes; 9 hold every such text.
 Written: the text with a closing zero.
 Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
 Source: IEC 60062.
 */
rko_status rko_marking_to_letters(const struct rko_marking *marking,
                                  char *buffer,
                                  size_t capacity,
                                  struct rko_detail *detail);

/*
 The usual print of a marking on a chip resistor.

 Given: `marking`; `buffer`, of `capacity` bytes; 9 hold every such text.
 Written: the text with a closing zero.
 Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
 */
rko_status rko_marking_to_chip(const struct rko_marking *marking,
                               char *buffer,
                               size_t capacity,
                               struct rko_detail *detail);

/*
 The print of a marking on a chip resistor in a form that is named.

 Given: `marking`; `form`, one of `RKO_CHIP_FORM_...`; `buffer`, of `capacity` bytes; 9 hold every such text.
 Written: the text with a closing zero.
 Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
 */
rko_status rko_marking_to_chip_as(const struct rko_marking *marking,
                                  uint32_t form,
                                  char *buffer,
                                  size_t capacity,
                                  struct rko_detail *detail);

/*
 Both reading directions of a row of bands, with what speaks against each.

 Given: `text` and its `length`; `edition`.
 Written: `ways`; a direction that does not decode has its own status there.
 Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_COLOUR`, `RKO_UNKNOWN_CODE`,
 `RKO_NULL_POINTER`.
 Source: IEC 60062.
 */
rko_status rko_marking_both_ways(const char *text,
                                 size_t length,
                                 uint32_t edition,
                                 struct rko_both_ways *ways,
                                 struct rko_detail *detail);

/*
 The word of a band's colour.

 Given: `colour`, a code as in `rko_bands`; `buffer`, of `capacity` bytes; 7 hold every word.
 Written: the word with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_colour_word(uint8_t colour, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 Conditions with nothing set, and a coverage probability of 0.95.

 Written: `setup`.
 Statuses: `RKO_NULL_POINTER`.
 */
rko_status rko_setup_new(struct rko_setup *setup, struct rko_detail *detail);

/*
 Evaluates readings of one part on one span: their mean, less the leads, less a parallel path, at the reference
 temperature, with the uncertainty of each.

 Given: `span`; `readings`, `count` of them, 1 or more, all within the span; `setup`, or null for `rko_setup_new`;
 `spans`, `span_count` of them, at most `RKO_SPANS_MOST`, the spans of the meter for advice on another one; null and 0
 for none.
 Written: `measurement`.
 Statuses: those of `rko_span_check`; `RKO_EMPTY` (no reading), `RKO_OVER_RANGE_READING` (with its index),
 `RKO_CONTRADICTION`, `RKO_MISSING_ARGUMENT`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_CODE`,
 `RKO_NULL_POINTER`.
 Source: JCGM 100; our coverage rule.
 */
rko_status rko_measurement_evaluate(const struct rko_span *span,
                                    const struct rko_reading *readings,
                                    size_t count,
                                    const struct rko_setup *setup,
                                    const struct rko_span *spans,
                                    size_t span_count,
                                    struct rko_measurement *measurement,
                                    struct rko_detail *detail);

/*
 Limits how many threads a call on large arrays may use in this process from now on; 0 takes the limit away, which is how it
 begins: as many as there are cores that the process may use. For programs that spread calls over the cores themselves. No
 result depends on it. In a library for bare metal it does nothing.
 */
void rko_limit_threads(uint32_t threads);

/*
 The values of one decade, in [1, 10), in ascending order.

 Given: `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `values`, as many as `series` says.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_decade(uint32_t series, double *values, struct rko_detail *detail);

/*
 The preferred value with the least |v - ohm|/ohm, the lower one on a tie. Values of the next decade count.

 Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `nearest_ohm`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_nearest_ohm(double ohm, uint32_t series, double *nearest_ohm, struct rko_detail *detail);

/*
 `rko_preferred_nearest_ohm` for `float`.
 */
rko_status rko_preferred_nearest_ohm_f32(float ohm, uint32_t series, float *nearest_ohm, struct rko_detail *detail);

/*
 `rko_preferred_nearest_ohm` for each of `count` resistances, all against one series.
 */
rko_status rko_preferred_nearest_ohm_n(const double *ohm,
                                       size_t count,
                                       uint32_t series,
                                       double *nearest_ohm,
                                       uint8_t *valid,
                                       struct rko_detail *detail);

/*
 `rko_preferred_nearest_ohm_n` for `float`.
 */
rko_status rko_preferred_nearest_ohm_n_f32(const float *ohm,
                                           size_t count,
                                           uint32_t series,
                                           float *nearest_ohm,
                                           uint8_t *valid,
                                           struct rko_detail *detail);

/*
 The highest preferred value that is not above this resistance: itself, if it is one.

 Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `below_ohm`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_below_ohm(double ohm, uint32_t series, double *below_ohm, struct rko_detail *detail);

/*
 `rko_preferred_below_ohm` for `float`.
 */
rko_status rko_preferred_below_ohm_f32(float ohm, uint32_t series, float *below_ohm, struct rko_detail *detail);

/*
 `rko_preferred_below_ohm` for each of `count` resistances, all against one series.
 */
rko_status rko_preferred_below_ohm_n(const double *ohm,
                                     size_t count,
                                     uint32_t series,
                                     double *below_ohm,
                                     uint8_t *valid,
                                     struct rko_detail *detail);

/*
 `rko_preferred_below_ohm_n` for `float`.
 */
rko_status rko_preferred_below_ohm_n_f32(const float *ohm,
                                         size_t count,
                                         uint32_t series,
                                         float *below_ohm,
                                         uint8_t *valid,
                                         struct rko_detail *detail);

/*
 The lowest preferred value that is not below this resistance: itself, if it is one.

 Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `above_ohm`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_above_ohm(double ohm, uint32_t series, double *above_ohm, struct rko_detail *detail);

/*
 `rko_preferred_above_ohm` for `float`.
 */
rko_status rko_preferred_above_ohm_f32(float ohm, uint32_t series, float *above_ohm, struct rko_detail *detail);

/*
 `rko_preferred_above_ohm` for each of `count` resistances, all against one series.
 */
rko_status rko_preferred_above_ohm_n(const double *ohm,
                                     size_t count,
                                     uint32_t series,
                                     double *above_ohm,
                                     uint8_t *valid,
                                     struct rko_detail *detail);

/*
 `rko_preferred_above_ohm_n` for `float`.
 */
rko_status rko_preferred_above_ohm_n_f32(const float *ohm,
                                         size_t count,
                                         uint32_t series,
                                         float *above_ohm,
                                         uint8_t *valid,
                                         struct rko_detail *detail);

/*
 Whether this resistance is a preferred value of the series, in any decade.

 Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `contains`, 1 if it is, else 0.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_contains(double ohm, uint32_t series, uint8_t *contains, struct rko_detail *detail);

/*
 `rko_preferred_contains` for `float`.
 */
rko_status rko_preferred_contains_f32(float ohm, uint32_t series, uint8_t *contains, struct rko_detail *detail);

/*
 `rko_preferred_contains` for each of `count` resistances, all against one series.
 */
rko_status rko_preferred_contains_n(const double *ohm,
                                    size_t count,
                                    uint32_t series,
                                    uint8_t *contains,
                                    uint8_t *valid,
                                    struct rko_detail *detail);

/*
 `rko_preferred_contains_n` for `float`.
 */
rko_status rko_preferred_contains_n_f32(const float *ohm,
                                        size_t count,
                                        uint32_t series,
                                        uint8_t *contains,
                                        uint8_t *valid,
                                        struct rko_detail *detail);

/*
 The series with the fewest values that holds this resistance.

 Given: `ohm`, in (0, 1e15].
 Written: `series`, its number of values in a decade; 0 if no series holds the resistance.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_coarsest(double ohm, uint32_t *series, struct rko_detail *detail);

/*
 `rko_preferred_coarsest` for each of `count` resistances.
 */
rko_status rko_preferred_coarsest_n(const double *ohm,
                                    size_t count,
                                    uint32_t *series,
                                    uint8_t *valid,
                                    struct rko_detail *detail);

/*
 The tolerance that a series is usual with.

 Given: `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
 Written: `tolerance`, a fraction; 0 for E3, which has none given.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: IEC 60063.
 */
rko_status rko_preferred_tolerance(uint32_t series, double *tolerance, struct rko_detail *detail);

/*
 The series of this name.

 Given: `name`, "E3" to "E192", a small "e" will do, and its `length`.
 Written: `series`, its number of values in a decade, as the other functions take it.
 Statuses: `RKO_UNKNOWN_SERIES`, `RKO_NULL_POINTER`.
 Source: IEC 60063:2015.
 */
rko_status rko_preferred_series(const char *name, size_t length, uint32_t *series, struct rko_detail *detail);

/*
 Works out what readings ask of a span.

 Given: `span`; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within its band.
 Written: `prepared`.
 Statuses: those of `rko_span_check`; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient;
 `RKO_CONTRADICTION` where a value shown is not one rounding of whole numbers that the number type holds: in float with
 a full scale of more than 2^24 times the power of ten of the step, or with a step above 1e10 ohm; in double never.
 */
rko_status rko_span_prepare(const struct rko_span *span,
                            const double *meter_temperature_c,
                            struct rko_prepared_span *prepared,
                            struct rko_detail *detail);

/*
 `rko_span_prepare` for `float`.
 */
rko_status rko_span_prepare_f32(const struct rko_span_f32 *span,
                                const float *meter_temperature_c,
                                struct rko_prepared_span_f32 *prepared,
                                struct rko_detail *detail);

/*
 What a display text means on a prepared span: the reading of `rko_span_read`, to the bit.

 Given: `prepared`; `text`, at most 32 bytes, and its `length`.
 Written: `reading`.
 Statuses: those that `rko_span_read` has of a text, where it has them. The detail holds the byte's offset as its index and
 no other number: `rko_span_read` says what else the text could be. `RKO_NULL_POINTER`, `RKO_CORRUPT_MEMORY`.
 */
rko_status rko_prepared_span_read(const struct rko_prepared_span *prepared,
                                  const char *text,
                                  size_t length,
                                  struct rko_reading *reading,
                                  struct rko_detail *detail);

/*
 `rko_prepared_span_read` for `float`.
 */
rko_status rko_prepared_span_read_f32(const struct rko_prepared_span_f32 *prepared,
                                      const char *text,
                                      size_t length,
                                      struct rko_reading_f32 *reading,
                                      struct rko_detail *detail);

/*
 The accuracy clause of a prepared span at a reading: the half-width of `rko_span_clause_half_width_ohm`, to the bit.

 Given: `prepared`; `ohm`, finite.
 Written: `half_width_ohm`.
 Statuses: `RKO_NOT_FINITE`; `RKO_NULL_POINTER`, `RKO_CORRUPT_MEMORY`.
 */
rko_status rko_prepared_span_clause_half_width_ohm(const struct rko_prepared_span *prepared,
                                                   double ohm,
                                                   double *half_width_ohm,
                                                   struct rko_detail *detail);

/*
 `rko_prepared_span_clause_half_width_ohm` for `float`.
 */
rko_status rko_prepared_span_clause_half_width_ohm_f32(const struct rko_prepared_span_f32 *prepared,
                                                       float ohm,
                                                       float *half_width_ohm,
                                                       struct rko_detail *detail);

/*
 What a display text means on a span: digits as the display shows them, over-range marks of that span, a minus, a decimal
 comma, a letter k, M or G behind.

 Given: `span`; `text`, at most 32 bytes, and its `length`.
 Written: `reading`.
 Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
 `RKO_MARK_NOT_OF_SPAN`, `RKO_MISSING_POINT`, `RKO_TOO_FEW_DECIMALS`, `RKO_TOO_MANY_DECIMALS`, `RKO_TOO_MANY_DIGITS`,
 `RKO_OFF_GRID`, `RKO_BEYOND_FULL_SCALE`, `RKO_AMBIGUOUS_TEXT`; `RKO_NULL_POINTER`.
 */
rko_status rko_span_read(const struct rko_span *span,
                         const char *text,
                         size_t length,
                         struct rko_reading *reading,
                         struct rko_detail *detail);

/*
 `rko_span_read` for `float`.
 */
rko_status rko_span_read_f32(const struct rko_span_f32 *span,
                             const char *text,
                             size_t length,
                             struct rko_reading_f32 *reading,
                             struct rko_detail *detail);

/*
 `rko_span_read` for each of `count` texts on one span.

 Given: `bytes`, the texts one after another; `offsets`, `count + 1` of them, ascending from 0 or more: text i is the bytes
 from `offsets[i]` to before `offsets[i + 1]`. In the detail of a bad element `index` is the element, and the byte is
 `lower` for `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS` and `RKO_MARK_NOT_OF_SPAN`.
 Statuses: those of `rko_span_read`, and `RKO_CONTRADICTION` for offsets that do not ascend.
 */
rko_status rko_span_read_n(const struct rko_span *span,
                           const char *bytes,
                           const int64_t *offsets,
                           size_t count,
                           struct rko_reading *readings,
                           uint8_t *valid,
                           struct rko_detail *detail);

/*
 `rko_span_read_n` for `float`.
 */
rko_status rko_span_read_n_f32(const struct rko_span_f32 *span,
                               const char *bytes,
                               const int64_t *offsets,
                               size_t count,
                               struct rko_reading_f32 *readings,
                               uint8_t *valid,
                               struct rko_detail *detail);

/*
 What a meter's answer over the wire means on a span, in ohm, in the numeric forms NR1, NR2 and NR3; 9.9E37 is over-range.

 Given: `span`; `text`, at most 128 bytes, and its `length`.
 Written: `reading`.
 Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
 `RKO_RESULT_OUT_OF_RANGE`, `RKO_NO_READING`, `RKO_UNDEFINED_MARK`, `RKO_BEYOND_FULL_SCALE`; `RKO_NULL_POINTER`.
 Source: IEEE 488.2, SCPI-1999, as reprinted in programming guides of several instruments.
 */
rko_status rko_span_read_reply(const struct rko_span *span,
                               const char *text,
                               size_t length,
                               struct rko_reading *reading,
                               struct rko_detail *detail);

/*
 `rko_span_read_reply` for `float`.
 */
rko_status rko_span_read_reply_f32(const struct rko_span_f32 *span,
                                   const char *text,
                                   size_t length,
                                   struct rko_reading_f32 *reading,
                                   struct rko_detail *detail);

/*
 `rko_span_read_reply` for each of `count` texts on one span, given as for `rko_span_read_n`.
 */
rko_status rko_span_read_reply_n(const struct rko_span *span,
                                 const char *bytes,
                                 const int64_t *offsets,
                                 size_t count,
                                 struct rko_reading *readings,
                                 uint8_t *valid,
                                 struct rko_detail *detail);

/*
 `rko_span_read_reply_n` for `float`.
 */
rko_status rko_span_read_reply_n_f32(const struct rko_span_f32 *span,
                                     const char *bytes,
                                     const int64_t *offsets,
                                     size_t count,
                                     struct rko_reading_f32 *readings,
                                     uint8_t *valid,
                                     struct rko_detail *detail);

/*
 The estimate that a single reading stands for: its value with the meter's error, as the accuracy clause means it at that
 value, and with the step of the display where the clause does not hold it.

 What `rko_measurement_evaluate` makes of the reading where nothing else is set than the meter's temperature, to the bit,
 without a budget: all that a small processor needs for a verdict. Nothing is known of the scatter of a single reading:
 add it with `rko_estimate_with_type_a`, or with `rko_estimate_with_normal` as it is known from before.

 Given: `span`; `reading`, taken on it; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within
 its band.
 Written: `estimate`, in ohm.
 Statuses: those of `rko_span_check`; `RKO_OVER_RANGE_READING`; `RKO_BEYOND_FULL_SCALE` and `RKO_CONTRADICTION` for a
 reading of another span; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient;
 `RKO_RESULT_OUT_OF_RANGE`.
 Source: JCGM 100 4.3.7.
 */
rko_status rko_span_estimate(const struct rko_span *span,
                             const struct rko_reading *reading,
                             const double *meter_temperature_c,
                             struct rko_estimate *estimate,
                             struct rko_detail *detail);

/*
 `rko_span_estimate` for `float`.
 */
rko_status rko_span_estimate_f32(const struct rko_span_f32 *span,
                                 const struct rko_reading_f32 *reading,
                                 const float *meter_temperature_c,
                                 struct rko_estimate_f32 *estimate,
                                 struct rko_detail *detail);

/*
 The rule by which the value alone decides.

 Written: `rule`.
 Statuses: `RKO_NULL_POINTER`.
 Source: JCGM 106 8.2.
 */
rko_status rko_rule_simple_acceptance(struct rko_rule *rule, struct rko_detail *detail);

/*
 `rko_rule_simple_acceptance` for `float`.
 */
rko_status rko_rule_simple_acceptance_f32(struct rko_rule_f32 *rule, struct rko_detail *detail);

/*
 The rule with a guard band at each limit by itself: a part conforms only if the probability that it lies beyond that
 limit is at most `risk`, and does not conform only if the probability that it lies on the good side is at most `risk`.

 Given: `risk`, in (0, 0.5).
 Written: `rule`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: JCGM 106 8.3.
 */
rko_status rko_rule_guarded(double risk, struct rko_rule *rule, struct rko_detail *detail);

/*
 `rko_rule_guarded` for `float`.
 */
rko_status rko_rule_guarded_f32(float risk, struct rko_rule_f32 *rule, struct rko_detail *detail);

/*
 The rule that bounds the probability of lying outside the limits, either of them.

 Given: `risk`, in (0, 0.5).
 Written: `rule`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
 Source: JCGM 106 8.3.
 */
rko_status rko_rule_max_risk(double risk, struct rko_rule *rule, struct rko_detail *detail);

/*
 `rko_rule_max_risk` for `float`.
 */
rko_status rko_rule_max_risk_f32(float risk, struct rko_rule_f32 *rule, struct rko_detail *detail);

/*
 Fills a thermistor as its data sheet states it. Its domain is what the rated temperature and the two of the B-value span:
 the equation bends away from the part elsewhere, by half a kelvin and more at frost where they are 25 and 85.
 `rko_b_value_thermistor_with_domain` asks for another. The equation is for zero power: self-heating by the meter's current
 is not in it.

 Given: `rated_ohm`, in (0, 1e15]; `rated_temperature_c`, -200 to 1000, 25 as a rule; `b_kelvin`, 100 to 20 000; `b_first_c`
 and `b_second_c`, the two temperatures that the B-value belongs to, -200 to 1000.
 Written: `thermistor`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION` (both temperatures are the same), `RKO_NULL_POINTER`.
 Source: IEC 60539-1.
 */
rko_status rko_b_value_thermistor_new(double rated_ohm,
                                      double rated_temperature_c,
                                      double b_kelvin,
                                      double b_first_c,
                                      double b_second_c,
                                      struct rko_b_value_thermistor *thermistor,
                                      struct rko_detail *detail);

/*
 `rko_b_value_thermistor_new` for `float`.
 */
rko_status rko_b_value_thermistor_new_f32(float rated_ohm,
                                          float rated_temperature_c,
                                          float b_kelvin,
                                          float b_first_c,
                                          float b_second_c,
                                          struct rko_b_value_thermistor_f32 *thermistor,
                                          struct rko_detail *detail);

/*
 The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.

 Given: `thermistor`, as it was filled; `lower_c` and `upper_c`, -200 to 1000, the lower one first.
 Written: `with_it`, which may be `thermistor` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_b_value_thermistor_with_domain(const struct rko_b_value_thermistor *thermistor,
                                              double lower_c,
                                              double upper_c,
                                              struct rko_b_value_thermistor *with_it,
                                              struct rko_detail *detail);

/*
 `rko_b_value_thermistor_with_domain` for `float`.
 */
rko_status rko_b_value_thermistor_with_domain_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                  float lower_c,
                                                  float upper_c,
                                                  struct rko_b_value_thermistor_f32 *with_it,
                                                  struct rko_detail *detail);

/*
 The resistance of a thermistor, ohm.

 Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
 Written: `resistance_ohm`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_b_value_thermistor_resistance_ohm(const struct rko_b_value_thermistor *thermistor,
                                                 double temperature_c,
                                                 double *resistance_ohm,
                                                 struct rko_detail *detail);

/*
 `rko_b_value_thermistor_resistance_ohm` for `float`.
 */
rko_status rko_b_value_thermistor_resistance_ohm_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                     float temperature_c,
                                                     float *resistance_ohm,
                                                     struct rko_detail *detail);

/*
 `rko_b_value_thermistor_resistance_ohm` for each of `count` values.
 */
rko_status rko_b_value_thermistor_resistance_ohm_n(const struct rko_b_value_thermistor *thermistor,
                                                   const double *temperature_c,
                                                   size_t count,
                                                   double *resistance_ohm,
                                                   uint8_t *valid,
                                                   struct rko_detail *detail);

/*
 `rko_b_value_thermistor_resistance_ohm_n` for `float`.
 */
rko_status rko_b_value_thermistor_resistance_ohm_n_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                       const float *temperature_c,
                                                       size_t count,
                                                       float *resistance_ohm,
                                                       uint8_t *valid,
                                                       struct rko_detail *detail);

/*
 How much the resistance of a thermistor changes with the temperature, ohm a kelvin: the derivative of the formula itself.

 Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
 Written: `slope_ohm_per_kelvin`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_b_value_thermistor_slope_ohm_per_kelvin(const struct rko_b_value_thermistor *thermistor,
                                                       double temperature_c,
                                                       double *slope_ohm_per_kelvin,
                                                       struct rko_detail *detail);

/*
 `rko_b_value_thermistor_slope_ohm_per_kelvin` for `float`.
 */
rko_status rko_b_value_thermistor_slope_ohm_per_kelvin_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                           float temperature_c,
                                                           float *slope_ohm_per_kelvin,
                                                           struct rko_detail *detail);

/*
 `rko_b_value_thermistor_slope_ohm_per_kelvin` for each of `count` values.
 */
rko_status rko_b_value_thermistor_slope_ohm_per_kelvin_n(const struct rko_b_value_thermistor *thermistor,
                                                         const double *temperature_c,
                                                         size_t count,
                                                         double *slope_ohm_per_kelvin,
                                                         uint8_t *valid,
                                                         struct rko_detail *detail);

/*
 `rko_b_value_thermistor_slope_ohm_per_kelvin_n` for `float`.
 */
rko_status rko_b_value_thermistor_slope_ohm_per_kelvin_n_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                             const float *temperature_c,
                                                             size_t count,
                                                             float *slope_ohm_per_kelvin,
                                                             uint8_t *valid,
                                                             struct rko_detail *detail);

/*
 The temperature of a thermistor, degrees Celsius.

 Given: `thermistor`, as it was filled; `resistance_ohm`, within the resistances at the ends of its domain.
 Written: `temperature_c`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_b_value_thermistor_temperature_c(const struct rko_b_value_thermistor *thermistor,
                                                double resistance_ohm,
                                                double *temperature_c,
                                                struct rko_detail *detail);

/*
 `rko_b_value_thermistor_temperature_c` for `float`.
 */
rko_status rko_b_value_thermistor_temperature_c_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                    float resistance_ohm,
                                                    float *temperature_c,
                                                    struct rko_detail *detail);

/*
 `rko_b_value_thermistor_temperature_c` for each of `count` values.
 */
rko_status rko_b_value_thermistor_temperature_c_n(const struct rko_b_value_thermistor *thermistor,
                                                  const double *resistance_ohm,
                                                  size_t count,
                                                  double *temperature_c,
                                                  uint8_t *valid,
                                                  struct rko_detail *detail);

/*
 `rko_b_value_thermistor_temperature_c_n` for `float`.
 */
rko_status rko_b_value_thermistor_temperature_c_n_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                      const float *resistance_ohm,
                                                      size_t count,
                                                      float *temperature_c,
                                                      uint8_t *valid,
                                                      struct rko_detail *detail);

/*
 The resistance where the temperature is uncertain: every part of the estimate scaled by the slope there. This is linear, so it
 holds as long as the slope changes little within the uncertainty; the parameters count as exact.

 Given: `thermistor`, as it was filled; `temperature`, in degrees Celsius, its value within the domain.
 Written: `resistance`, in ohm.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
 `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.
 */
rko_status rko_b_value_thermistor_resistance_estimate(const struct rko_b_value_thermistor *thermistor,
                                                      const struct rko_estimate *temperature,
                                                      struct rko_estimate *resistance,
                                                      struct rko_detail *detail);

/*
 `rko_b_value_thermistor_resistance_estimate` for `float`.
 */
rko_status rko_b_value_thermistor_resistance_estimate_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                          const struct rko_estimate_f32 *temperature,
                                                          struct rko_estimate_f32 *resistance,
                                                          struct rko_detail *detail);

/*
 The temperature where the resistance is uncertain: every part of the estimate divided by the slope there. This is linear, so
 it holds as long as the slope changes little within the uncertainty; the parameters count as exact.

 Given: `thermistor`, as it was filled; `resistance`, in ohm, its value within the domain.
 Written: `temperature`, in degrees Celsius.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
 `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.
 */
rko_status rko_b_value_thermistor_temperature_estimate(const struct rko_b_value_thermistor *thermistor,
                                                       const struct rko_estimate *resistance,
                                                       struct rko_estimate *temperature,
                                                       struct rko_detail *detail);

/*
 `rko_b_value_thermistor_temperature_estimate` for `float`.
 */
rko_status rko_b_value_thermistor_temperature_estimate_f32(const struct rko_b_value_thermistor_f32 *thermistor,
                                                           const struct rko_estimate_f32 *resistance,
                                                           struct rko_estimate_f32 *temperature,
                                                           struct rko_detail *detail);

/*
 Fills a thermistor of three terms: 1/T = a + b·L + d·L³, as Steinhart and Hart gave it. The equation is for zero power:
 self-heating by the meter's current is not in it.

 Given: `coefficients`, three of them: a, b and d in 1/K (often called A, B and C); `reference_ohm`, in (0, 1e15]: 1 where they
 are for ln R, and the rated resistance where they are for the logarithm of the ratio to it; `lower_c` and `upper_c`, the
 domain, which is that of the points that the coefficients were found from, within -200 to 1000.
 Written: `thermistor`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION` (a domain without extent, or coefficients that give no
 resistance that falls smoothly over it), `RKO_NULL_POINTER`.
 Source: Steinhart and Hart, Deep-Sea Research 15 (1968) 497.
 */
rko_status rko_steinhart_hart_three_terms(const double *coefficients,
                                          double reference_ohm,
                                          double lower_c,
                                          double upper_c,
                                          struct rko_steinhart_hart *thermistor,
                                          struct rko_detail *detail);

/*
 `rko_steinhart_hart_three_terms` for `float`.
 */
rko_status rko_steinhart_hart_three_terms_f32(const float *coefficients,
                                              float reference_ohm,
                                              float lower_c,
                                              float upper_c,
                                              struct rko_steinhart_hart_f32 *thermistor,
                                              struct rko_detail *detail);

/*
 Fills a thermistor of four terms: 1/T = a + b·L + c·L² + d·L³.

 Given: `coefficients`, four of them: a, b, c and d in 1/K; all else as of `rko_steinhart_hart_three_terms`.
 Written: `thermistor`.
 Statuses: as of `rko_steinhart_hart_three_terms`.
 Source: common practice.
 */
rko_status rko_steinhart_hart_four_terms(const double *coefficients,
                                         double reference_ohm,
                                         double lower_c,
                                         double upper_c,
                                         struct rko_steinhart_hart *thermistor,
                                         struct rko_detail *detail);

/*
 `rko_steinhart_hart_four_terms` for `float`.
 */
rko_status rko_steinhart_hart_four_terms_f32(const float *coefficients,
                                             float reference_ohm,
                                             float lower_c,
                                             float upper_c,
                                             struct rko_steinhart_hart_f32 *thermistor,
                                             struct rko_detail *detail);

/*
 The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.

 Given: `thermistor`, as it was filled; `lower_c` and `upper_c`, -200 to 1000, the lower one first.
 Written: `with_it`, which may be `thermistor` itself.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_steinhart_hart_with_domain(const struct rko_steinhart_hart *thermistor,
                                          double lower_c,
                                          double upper_c,
                                          struct rko_steinhart_hart *with_it,
                                          struct rko_detail *detail);

/*
 `rko_steinhart_hart_with_domain` for `float`.
 */
rko_status rko_steinhart_hart_with_domain_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                              float lower_c,
                                              float upper_c,
                                              struct rko_steinhart_hart_f32 *with_it,
                                              struct rko_detail *detail);

/*
 The resistance of a thermistor, ohm.

 Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
 Written: `resistance_ohm`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_steinhart_hart_resistance_ohm(const struct rko_steinhart_hart *thermistor,
                                             double temperature_c,
                                             double *resistance_ohm,
                                             struct rko_detail *detail);

/*
 `rko_steinhart_hart_resistance_ohm` for `float`.
 */
rko_status rko_steinhart_hart_resistance_ohm_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                 float temperature_c,
                                                 float *resistance_ohm,
                                                 struct rko_detail *detail);

/*
 `rko_steinhart_hart_resistance_ohm` for each of `count` values.
 */
rko_status rko_steinhart_hart_resistance_ohm_n(const struct rko_steinhart_hart *thermistor,
                                               const double *temperature_c,
                                               size_t count,
                                               double *resistance_ohm,
                                               uint8_t *valid,
                                               struct rko_detail *detail);

/*
 `rko_steinhart_hart_resistance_ohm_n` for `float`.
 */
rko_status rko_steinhart_hart_resistance_ohm_n_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                   const float *temperature_c,
                                                   size_t count,
                                                   float *resistance_ohm,
                                                   uint8_t *valid,
                                                   struct rko_detail *detail);

/*
 How much the resistance of a thermistor changes with the temperature, ohm a kelvin: the derivative of the formula itself.

 Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
 Written: `slope_ohm_per_kelvin`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_steinhart_hart_slope_ohm_per_kelvin(const struct rko_steinhart_hart *thermistor,
                                                   double temperature_c,
                                                   double *slope_ohm_per_kelvin,
                                                   struct rko_detail *detail);

/*
 `rko_steinhart_hart_slope_ohm_per_kelvin` for `float`.
 */
rko_status rko_steinhart_hart_slope_ohm_per_kelvin_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                       float temperature_c,
                                                       float *slope_ohm_per_kelvin,
                                                       struct rko_detail *detail);

/*
 `rko_steinhart_hart_slope_ohm_per_kelvin` for each of `count` values.
 */
rko_status rko_steinhart_hart_slope_ohm_per_kelvin_n(const struct rko_steinhart_hart *thermistor,
                                                     const double *temperature_c,
                                                     size_t count,
                                                     double *slope_ohm_per_kelvin,
                                                     uint8_t *valid,
                                                     struct rko_detail *detail);

/*
 `rko_steinhart_hart_slope_ohm_per_kelvin_n` for `float`.
 */
rko_status rko_steinhart_hart_slope_ohm_per_kelvin_n_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                         const float *temperature_c,
                                                         size_t count,
                                                         float *slope_ohm_per_kelvin,
                                                         uint8_t *valid,
                                                         struct rko_detail *detail);

/*
 The temperature of a thermistor, degrees Celsius.

 Given: `thermistor`, as it was filled; `resistance_ohm`, within the resistances at the ends of its domain.
 Written: `temperature_c`.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
 */
rko_status rko_steinhart_hart_temperature_c(const struct rko_steinhart_hart *thermistor,
                                            double resistance_ohm,
                                            double *temperature_c,
                                            struct rko_detail *detail);

/*
 `rko_steinhart_hart_temperature_c` for `float`.
 */
rko_status rko_steinhart_hart_temperature_c_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                float resistance_ohm,
                                                float *temperature_c,
                                                struct rko_detail *detail);

/*
 `rko_steinhart_hart_temperature_c` for each of `count` values.
 */
rko_status rko_steinhart_hart_temperature_c_n(const struct rko_steinhart_hart *thermistor,
                                              const double *resistance_ohm,
                                              size_t count,
                                              double *temperature_c,
                                              uint8_t *valid,
                                              struct rko_detail *detail);

/*
 `rko_steinhart_hart_temperature_c_n` for `float`.
 */
rko_status rko_steinhart_hart_temperature_c_n_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                  const float *resistance_ohm,
                                                  size_t count,
                                                  float *temperature_c,
                                                  uint8_t *valid,
                                                  struct rko_detail *detail);

/*
 The resistance where the temperature is uncertain: every part of the estimate scaled by the slope there. This is linear, so it
 holds as long as the slope changes little within the uncertainty; the parameters count as exact.

 Given: `thermistor`, as it was filled; `temperature`, in degrees Celsius, its value within the domain.
 Written: `resistance`, in ohm.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
 `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.
 */
rko_status rko_steinhart_hart_resistance_estimate(const struct rko_steinhart_hart *thermistor,
                                                  const struct rko_estimate *temperature,
                                                  struct rko_estimate *resistance,
                                                  struct rko_detail *detail);

/*
 `rko_steinhart_hart_resistance_estimate` for `float`.
 */
rko_status rko_steinhart_hart_resistance_estimate_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                      const struct rko_estimate_f32 *temperature,
                                                      struct rko_estimate_f32 *resistance,
                                                      struct rko_detail *detail);

/*
 The temperature where the resistance is uncertain: every part of the estimate divided by the slope there. This is linear, so
 it holds as long as the slope changes little within the uncertainty; the parameters count as exact.

 Given: `thermistor`, as it was filled; `resistance`, in ohm, its value within the domain.
 Written: `temperature`, in degrees Celsius.
 Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
 `RKO_NULL_POINTER`.
 Source: JCGM 100 5.1.
 */
rko_status rko_steinhart_hart_temperature_estimate(const struct rko_steinhart_hart *thermistor,
                                                   const struct rko_estimate *resistance,
                                                   struct rko_estimate *temperature,
                                                   struct rko_detail *detail);

/*
 `rko_steinhart_hart_temperature_estimate` for `float`.
 */
rko_status rko_steinhart_hart_temperature_estimate_f32(const struct rko_steinhart_hart_f32 *thermistor,
                                                       const struct rko_estimate_f32 *resistance,
                                                       struct rko_estimate_f32 *temperature,
                                                       struct rko_detail *detail);

/*
 A span with the usual conditions: the clause is a limit, the display's step is inside its counts, it holds from 18 to 28
 degrees Celsius (common practice), and there is no part of full scale.

 Given: `label`, 1 to 15 bytes of UTF-8, and `label_length`; `full_scale_ohm`, `resolution_ohm`, `display_unit_ohm`,
 `marks`, `fraction_of_reading`, `accuracy_counts`, as the members of `rko_span`.
 Written: `span`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`,
 `RKO_CONTRADICTION`, `RKO_MISSING_ARGUMENT`, `RKO_UNKNOWN_RESOLUTION`, `RKO_UNKNOWN_DISPLAY_UNIT`, `RKO_UNKNOWN_MARKS`,
 `RKO_NULL_POINTER`.
 Source: the meter's specification.
 */
rko_status rko_span_new(const char *label,
                        size_t label_length,
                        double full_scale_ohm,
                        double resolution_ohm,
                        double display_unit_ohm,
                        uint32_t marks_of_span,
                        double fraction_of_reading,
                        double accuracy_counts,
                        struct rko_span *span,
                        struct rko_detail *detail);

/*
 `rko_span_new` for `float`.
 */
rko_status rko_span_new_f32(const char *label,
                            size_t label_length,
                            float full_scale_ohm,
                            float resolution_ohm,
                            float display_unit_ohm,
                            uint32_t marks_of_span,
                            float fraction_of_reading,
                            float accuracy_counts,
                            struct rko_span_f32 *span,
                            struct rko_detail *detail);

/*
 Whether a span is legal: the answer is the status.

 Given: `span`.
 Statuses: those of `rko_span_new`, and `RKO_UNKNOWN_CODE` for an unknown flag.
 */
rko_status rko_span_check(const struct rko_span *span, struct rko_detail *detail);

/*
 `rko_span_check` for `float`.
 */
rko_status rko_span_check_f32(const struct rko_span_f32 *span, struct rko_detail *detail);

/*
 The full scale of a span in steps of its display.

 Given: `span`.
 Written: `counts`.
 Statuses: those of `rko_span_check`.
 */
rko_status rko_span_full_scale_counts(const struct rko_span *span, int64_t *counts, struct rko_detail *detail);

/*
 `rko_span_full_scale_counts` for `float`.
 */
rko_status rko_span_full_scale_counts_f32(const struct rko_span_f32 *span, int64_t *counts, struct rko_detail *detail);

/*
 The accuracy clause of a span at a reading.

 Given: `span`; `ohm`, finite; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within its band.
 Written: `half_width_ohm`.
 Statuses: those of `rko_span_check`; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient.
 */
rko_status rko_span_clause_half_width_ohm(const struct rko_span *span,
                                          double ohm,
                                          const double *meter_temperature_c,
                                          double *half_width_ohm,
                                          struct rko_detail *detail);

/*
 `rko_span_clause_half_width_ohm` for `float`.
 */
rko_status rko_span_clause_half_width_ohm_f32(const struct rko_span_f32 *span,
                                              float ohm,
                                              const float *meter_temperature_c,
                                              float *half_width_ohm,
                                              struct rko_detail *detail);

/*
 What the display of a span shows for a resistance.

 Given: `span`; `ohm`, finite; `buffer`, of `capacity` bytes; 25 hold every such text.
 Written: the text with a closing zero.
 Statuses: those of `rko_span_check`; `RKO_BEYOND_FULL_SCALE` if the span has no mark; `RKO_BUFFER_TOO_SMALL`.
 */
rko_status rko_span_display_text(const struct rko_span *span,
                                 double ohm,
                                 char *buffer,
                                 size_t capacity,
                                 struct rko_detail *detail);

/*
 `rko_span_display_text` for `float`.
 */
rko_status rko_span_display_text_f32(const struct rko_span_f32 *span,
                                     float ohm,
                                     char *buffer,
                                     size_t capacity,
                                     struct rko_detail *detail);

/*
 An invented hand-held meter of 2000 counts, for demonstrations.

 Given: `spans`, room for `capacity` of them; `RKO_SPANS_MOST` is enough.
 Written: `spans`, from the lowest to the highest, and their `count`.
 Statuses: `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_meter_example_hand_held(struct rko_span *spans,
                                       size_t capacity,
                                       size_t *count,
                                       struct rko_detail *detail);

/*
 An invented bench meter of 5 1/2 digits, for demonstrations.

 Given: `spans`, room for `capacity` of them; `RKO_SPANS_MOST` is enough.
 Written: `spans`, from the lowest to the highest, and their `count`.
 Statuses: `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_meter_example_bench(struct rko_span *spans, size_t capacity, size_t *count, struct rko_detail *detail);

/*
 The full text of a failure, for a person to read: what was attempted, what was given, what is allowed, and a hint.
 Only in libraries built for hosts.

 Given: `of`, as a function has written it; `buffer`, of `capacity` bytes.
 Written: the text in UTF-8 with a closing zero.
 Statuses: `RKO_NULL_POINTER`; `RKO_BUFFER_TOO_SMALL`, when nothing is written and the detail's `index` is the number
 of bytes needed (`RKO_TEXT_CAPACITY` is always enough). `of` and `detail` may be the same.
 */
rko_status rko_detail_text(const struct rko_detail *of, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 Judges an estimate in ohm against limits under a rule.

 Given: `estimate`; `limits`; `rule`, without a default, since it is agreed beforehand.
 Written: `verdict`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
 */
rko_status rko_judge(const struct rko_estimate *estimate,
                     const struct rko_limits *limits,
                     const struct rko_rule *rule,
                     struct rko_verdict *verdict,
                     struct rko_detail *detail);

/*
 `rko_judge` for `float`.
 */
rko_status rko_judge_f32(const struct rko_estimate_f32 *estimate,
                         const struct rko_limits_f32 *limits,
                         const struct rko_rule_f32 *rule,
                         struct rko_verdict_f32 *verdict,
                         struct rko_detail *detail);

/*
 `rko_judge` for each of `count` estimates, all against the same limits under one rule.
 */
rko_status rko_judge_n(const struct rko_estimate *estimates,
                       size_t count,
                       const struct rko_limits *limits,
                       const struct rko_rule *rule,
                       struct rko_verdict *verdicts,
                       uint8_t *valid,
                       struct rko_detail *detail);

/*
 `rko_judge_n` for `float`.
 */
rko_status rko_judge_n_f32(const struct rko_estimate_f32 *estimates,
                           size_t count,
                           const struct rko_limits_f32 *limits,
                           const struct rko_rule_f32 *rule,
                           struct rko_verdict_f32 *verdicts,
                           uint8_t *valid,
                           struct rko_detail *detail);

/*
 The answer of `rko_judge`, always the same one, without the guard band, the acceptance limits and what else a verdict
 shows: no search, so that it is small and quick enough for a small processor.

 Given: `estimate`, in ohm; `limits`; `rule`, without a default, since it is agreed beforehand.
 Written: `decision`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
 */
rko_status rko_judge_answer(const struct rko_estimate *estimate,
                            const struct rko_limits *limits,
                            const struct rko_rule *rule,
                            struct rko_decision *decision,
                            struct rko_detail *detail);

/*
 `rko_judge_answer` for `float`.
 */
rko_status rko_judge_answer_f32(const struct rko_estimate_f32 *estimate,
                                const struct rko_limits_f32 *limits,
                                const struct rko_rule_f32 *rule,
                                struct rko_decision_f32 *decision,
                                struct rko_detail *detail);

/*
 The answer of `rko_judge_answer`, to the bit, for a value whose error is spread evenly within a half-width, normal, or
 both: a reading with its meter's clause and a known scatter. It needs no estimate, and takes a fraction of the code: where
 nothing else is linked, firmware has no part of what other estimates need.

 Given: `value`, finite; `half_width`, 0 or more, as of `rko_span_clause_half_width_ohm`; `u`, the standard uncertainty of
 the scatter, 0 or more; `limits`; `rule`.
 Written: `decision`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
 Source: JCGM 106, ISO 14253-1.
 */
rko_status rko_judge_value(double value,
                           double half_width,
                           double u,
                           const struct rko_limits *limits,
                           const struct rko_rule *rule,
                           struct rko_decision *decision,
                           struct rko_detail *detail);

/*
 `rko_judge_value` for `float`.
 */
rko_status rko_judge_value_f32(float value,
                               float half_width,
                               float u,
                               const struct rko_limits_f32 *limits,
                               const struct rko_rule_f32 *rule,
                               struct rko_decision_f32 *decision,
                               struct rko_detail *detail);

/*
 The probability that the true value lies within the limits, from the estimate's shape alone, no prior; one-sided parts
 are taken where they make it smallest.

 Given: `estimate`, in ohm; `limits`.
 Written: `probability`.
 Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
 `RKO_NULL_POINTER`.
 Source: JCGM 106 7.
 */
rko_status rko_conformance_probability(const struct rko_estimate *estimate,
                                       const struct rko_limits *limits,
                                       double *probability,
                                       struct rko_detail *detail);

/*
 `rko_conformance_probability` for `float`.
 */
rko_status rko_conformance_probability_f32(const struct rko_estimate_f32 *estimate,
                                           const struct rko_limits_f32 *limits,
                                           float *probability,
                                           struct rko_detail *detail);

/*
 `rko_conformance_probability` for each of `count` estimates, all against the same limits.
 */
rko_status rko_conformance_probability_n(const struct rko_estimate *estimates,
                                         size_t count,
                                         const struct rko_limits *limits,
                                         double *probability,
                                         uint8_t *valid,
                                         struct rko_detail *detail);

/*
 `rko_conformance_probability_n` for `float`.
 */
rko_status rko_conformance_probability_n_f32(const struct rko_estimate_f32 *estimates,
                                             size_t count,
                                             const struct rko_limits_f32 *limits,
                                             float *probability,
                                             uint8_t *valid,
                                             struct rko_detail *detail);

/*
 A verdict in one line, for a person to read.

 Given: `verdict`, as a function has written it; `buffer`, of `capacity` bytes.
 Written: the text in UTF-8 with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_OUT_OF_RANGE` for a rule's risk, `RKO_NULL_POINTER`.
 */
rko_status rko_verdict_text(const struct rko_verdict *verdict,
                            char *buffer,
                            size_t capacity,
                            struct rko_detail *detail);

/*
 An answer in words: "conforms", "does not conform", "undecided".

 Given: `answer`, one of `RKO_ANSWER_...`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_answer_text(uint32_t answer, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A side in words: "inside", "outside".

 Given: `side`, one of `RKO_SIDE_...`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_side_text(uint32_t side, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A next step in words.

 Given: `next_step`, one of `RKO_NEXT_STEP_...`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_next_step_text(uint32_t next_step, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A contribution of a budget in words, such as "accuracy clause of the meter".

 Given: `contribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_contribution_text(uint32_t contribution, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 The unit of a contribution's value and width: "ohm", "S", "1/K" or "K".

 Given: `contribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_contribution_unit_text(uint32_t contribution, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A distribution in words, such as "rectangular".

 Given: `distribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_distribution_text(uint32_t distribution, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A piece of advice as a sentence.

 Given: `advice`, as a function has written it; `buffer`, of `capacity` bytes.
 Written: the text in UTF-8 with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_advice_text(const struct rko_advice *advice, char *buffer, size_t capacity, struct rko_detail *detail);

/*
 A marking as a person would say it, such as "4.7 kohm, 5 %".

 Given: `marking`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: those of `rko_marking_from_value`; `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`.
 */
rko_status rko_marking_text(const struct rko_marking *marking,
                            char *buffer,
                            size_t capacity,
                            struct rko_detail *detail);

/*
 A doubt about a reading direction as a sentence.

 Given: `doubt`, a single one of `RKO_DOUBT_...`; `buffer`, of `capacity` bytes.
 Written: the text with a closing zero.
 Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
 */
rko_status rko_doubt_text(uint32_t doubt, char *buffer, size_t capacity, struct rko_detail *detail);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* RECKOHM_H */
