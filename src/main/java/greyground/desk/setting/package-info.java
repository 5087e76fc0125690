/**
 * The settings of the five stations and the pane that shows them. Door: {@link greyground.desk.setting.Settings}.
 */
@NullMarked
package greyground.desk.setting;

import org.jspecify.annotations.NullMarked;
