package greyground.art.page;

import java.io.IOException;

/** Why a picture can't be read, in words that go on from "it can't be read" and may reach a user; those of any other exception may not. */
public final class Unreadable extends IOException {
    private static final long serialVersionUID = 1;

    private final String reason;

    public Unreadable(String reason) {
        super(reason);
        this.reason = reason;
    }

    public Unreadable(String reason, Throwable cause) {
        super(reason, cause);
        this.reason = reason;
    }

    public String reason() {
        return reason;
    }
}
