/** Benchmarks, run by hand; no test measures time. */
package greyground.bench;
