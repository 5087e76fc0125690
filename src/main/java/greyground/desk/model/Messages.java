package greyground.desk.model;

/** What the window says and asks, in whole sentences: something is done, something can't be done, or an answer is wanted. */
public interface Messages {
    /** Something is done; said until something else is. */
    void done(String words, Answer... next);

    /** Something can't be done: why, and what to do about it. */
    void cant(String words, Answer... next);

    /** Asks; Enter gives the first answer and Escape the last, which changes nothing. An earlier question goes. */
    void ask(String words, Answer... answers);

    /** Takes back what was said; a question stays until it is answered. */
    void clear();

    /** The words of a button, and what follows when it is pressed. */
    record Answer(String words, Runnable then) {}
}
