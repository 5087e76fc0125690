/**
 * Bytes from outside, mutated under the guidance of coverage: one class for each way in, {@link greyground.fuzz.Fuzzing} to run them,
 * and the tests that replay the seeds and everything that was ever found.
 */
package greyground.fuzz;
