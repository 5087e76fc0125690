/**
 * The job: plate, paper, art's place, process, grain and marks, and the plain file that keeps it. Door: {@link
 * greyground.film.job.Job}.
 */
@NullMarked
package greyground.film.job;

import org.jspecify.annotations.NullMarked;
