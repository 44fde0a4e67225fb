/* Axlewright: unit-safe vehicle-engineering functions for one-off vehicle builders. C99 and C++17.
 *
 * WHAT IS WHERE. This header includes all of these; each can be included alone.
 *   axlewright/core.h         statuses, version, units and text, tables, verdicts, the catalogue at run time
 *   axlewright/air.h          11 functions: the standard atmosphere, moist air, and pressures against the air around
 *   axlewright/bracket.h      2 functions and 1 model: tabs with a bolt or a rod end, and the wall of the tube that
 *                               carries them
 *   axlewright/cooling.h      19 functions and 4 models: how far the coolant is from boiling, which cap it wants, and
 *                               what a pressure test should read
 *   axlewright/driveline.h    20 functions and 2 models: ratios, speeds and torque from the crankshaft to the ground
 *   axlewright/engine.h       10 functions and 1 model: torque, power and the curve between them; size, load and
 *                               charge
 *   axlewright/fastener.h     13 functions and 7 models: thread, strength and tightening of a bolt, its engaged
 *                               length, the joint that it clamps, groups of bolts, and wheel studs
 *   axlewright/fluid.h        26 functions: water, and its mixtures with glycol
 *   axlewright/loads.h        0 functions and 1 model: the forces of the ground on each tyre, and where they act, for
 *                               the strength of what carries them
 *   axlewright/mass.h         9 functions and 2 models: Mass and balance
 *   axlewright/material.h     4 functions and 2 models: what a shop buys by grade, and how thick a gauge number is
 *   axlewright/ride.h         8 functions and 5 models: a wheel and its share of the body on a road, the body on both
 *                               axles, and on four wheels
 *   axlewright/section.h      5 functions and 9 models: what they resist, and what a link of them carries
 *   axlewright/spring.h       42 functions and 6 models: Springs, wheel rate and dampers
 *   axlewright/suspension.h   11 functions and 5 models: linkages drawn point by point, roll, and how the axles share
 *                               what a turn moves
 *   axlewright/tyre.h         12 functions and 2 models: marking on the wall, load capacity, loaded and rolling
 *                               radius, place of the wheel, and the effect of a change
 *   axlewright/weld.h         1 functions and 2 models: throat, stress of a group under an eccentric load, and
 *                               fatigue by detail class
 *   axlewright/sheet.h        the build sheet: assessment, what-if, price list, choice of parts
 *
 * NUMBERS are coherent SI; axw_text_read("225 lbf/in", "linear stiffness", &si) and axw_text_print cross to shop units. An argument lies
 * within 1e30, and one that must be above zero is at least 1e-30, so that no result overflows. A function never gives NaN or an
 * infinity with AXW_OK; in a table, an assessment or the results of a model, NaN is a number that is not known.
 *
 * STATUS. An entry that returns int32_t returns AXW_OK or another status, and writes its outputs only on success. An output pointer may
 * be NULL where that result is not wanted, but a handle or a table is always wanted. axw_last_message(buffer, size) tells what was
 * wrong, with argument, value and limit.
 *     0 AXW_OK           3 AXW_NO_SOLUTION   6 AXW_LENGTH    102 AXW_UTF8        105 AXW_STOPPED
 *     1 AXW_OUT_OF_RANGE 4 AXW_TEXT        100 AXW_NULL      103 AXW_NOT_THERE   199 AXW_FAULT
 *     2 AXW_CONTRADICTION 5 AXW_DOCUMENT   101 AXW_BUFFER    104 AXW_ROWS
 *
 * FUNCTIONS. axw_<system>_<name>(arguments, &result) takes numbers. Each argument's comment has its unit and range: a value outside is
 * AXW_OUT_OF_RANGE, two that exclude each other are AXW_CONTRADICTION, allowed ones without an answer are AXW_NO_SOLUTION.
 *   ..._value(arguments)             returns the result itself, or NaN on failure; with several results, ..._<result>_value.
 *   ..._n(n, arrays, results, reason) works on arrays of length n. An input may also be an output, otherwise arrays must not overlap. A
 *                                    refused row is NaN in every output, its status stands in `reason` (may be NULL), and the entry
 *                                    returns AXW_ROWS. Where an input array is NULL nothing is written.
 * axw_function_name and axw_function_describe list the functions at run time, with formula, conditions and source.
 *
 * MODELS. axw_<system>_<model>_new(text, &model) reads JSON or TOML: the fields stand above the handle's type, with an example. _new_si
 * takes named values in coherent SI instead: see axw_sheet_new_si. A document that is refused is AXW_DOCUMENT, with all its faults in
 * the message. _json writes the document, _free frees the model; NULL is allowed.
 *   More than eight results come in one struct: set its `size` to sizeof first. It is filled up to that size and never beyond,
 *   whichever header its program was compiled with; new results go to its end only.
 *
 * TEXT. An output text `x` is a buffer of `x_size` bytes; `x_needed` receives the bytes that the text needs, its closing NUL included:
 * ask with `x` NULL first. A buffer that is too short is AXW_BUFFER, and
 * then nothing is written. Text is UTF-8.
 *
 * HANDLES and tables belong to the caller until freed. Only an entry that takes a handle without `const` changes it, and wants it
 * alone; else any number of threads may read the same one, and one of them frees it when no other uses it any more.
 *
 * POINTERS are aligned for their types, as C demands. A length may be 0, and its array NULL then. One whose bytes no memory holds is
 * AXW_LENGTH.
 *
 * CAUTION. Brakes, steering, frames, welds, hot pressurised coolant and loaded springs can injure and kill. A result is one input to
 * the judgement of a qualified person; local codes and licensed practice come first.
 *
 * Generated by `cargo xtask generate`; do not edit. */

#ifndef AXLEWRIGHT_H
#define AXLEWRIGHT_H

#include "axlewright/core.h"
#include "axlewright/air.h"
#include "axlewright/bracket.h"
#include "axlewright/cooling.h"
#include "axlewright/driveline.h"
#include "axlewright/engine.h"
#include "axlewright/fastener.h"
#include "axlewright/fluid.h"
#include "axlewright/loads.h"
#include "axlewright/mass.h"
#include "axlewright/material.h"
#include "axlewright/ride.h"
#include "axlewright/section.h"
#include "axlewright/spring.h"
#include "axlewright/suspension.h"
#include "axlewright/tyre.h"
#include "axlewright/weld.h"
#include "axlewright/sheet.h"

#endif  /* AXLEWRIGHT_H */
