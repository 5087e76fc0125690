/**
 * A job looked at from all sides while it is worked on; what a change doesn't touch is kept. Door: {@link
 * greyground.app.live.LiveBench}.
 */
@NullMarked
package greyground.app.live;

import org.jspecify.annotations.NullMarked;
