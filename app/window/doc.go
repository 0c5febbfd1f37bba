// Package window is the program's window: the work in order on the left, one
// screen in the middle, findings on the right when wanted, and below always
// the line that says what the last edit changed. It joins the screens to the
// open document; the screens know neither it nor each other.
package window
