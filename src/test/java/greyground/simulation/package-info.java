/** A simulated workshop: plates of hidden numbers, their prints, and a scanner; shares no code with the reader of scans. */
package greyground.simulation;
