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
 *   Threads    Every function may be called from any thread at any time. There is no heap use, no global state and no
 *              locale. Large arrays may be split over threads as you like: the results are the same.
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

/** A text that does not fit into the room given for it. Only the C door has it. */
#define RKO_BUFFER_TOO_SMALL 92

/*
 * Ranges: the `row` of a detail, what it is of, what is allowed, and the source.
 *
 *    1  probability: (0, 1) (JCGM 106 3.1)
 *    2  degrees of freedom: (0, inf] (JCGM 100 G.3)
 *    3  number: any finite number (our rule: no infinity and no NaN enters)
 *    4  resistance: (0, 1e15] ohm (our rule: beyond it is insulation, not a resistance)
 *    5  tolerance: (0, 1) (IEC 60062)
 */


/*
 The version of this binary interface. It grows with every change that a compiled caller would feel.
 */
#define RKO_ABI_VERSION 1

/*
 Bytes that hold every text of this library with its closing zero.
 */
#define RKO_TEXT_CAPACITY 1024

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
 The function did what it was asked for, and its outputs are written.
 */
#define RKO_OK 0

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/*
 The version of the binary interface that the library was built with. A program compares it with `RKO_ABI_VERSION`
 of the header that it was compiled with, and does not go on when they differ.

 Returns: the version, a whole number from 1.
 */
uint32_t rko_abi_version(void);

/*
 The full text of a failure, for a person to read: what was attempted, what was given, what is allowed, and a hint.
 Only in libraries built for hosts.

 Given: `of`, as a function has written it; `buffer`, of `capacity` bytes.
 Written: the text in UTF-8 with a closing zero.
 Statuses: `RKO_NULL_POINTER`; `RKO_BUFFER_TOO_SMALL`, when nothing is written and the detail's `index` is the number
 of bytes needed (`RKO_TEXT_CAPACITY` is always enough). `of` and `detail` may be the same.
 */
rko_status rko_detail_text(const struct rko_detail *of, char *buffer, size_t capacity, struct rko_detail *detail);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* RECKOHM_H */
