/** Films measured in millimetres from outside: by poppler's pixels and by a scanner. */
package greyground.cli.measured;
