package greyground.app.files;

import greyground.workshop.Workshop;

/**
 * What a reading would make of the workshop.
 *
 * @param before the workshop that it began from
 * @param after the taught workshop
 * @param name date and chart, such as "2026-11-25-PEGEO"
 */
public record Lesson(Workshop before, Workshop after, String name) {}
