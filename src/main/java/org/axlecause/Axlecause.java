package org.axlecause;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import org.axlecause.access.MakeKeyCommand;
import org.axlecause.shared.DatabaseAtHand;
import org.axlecause.shared.RequestDeadline;

/** Starts the service, with a database of its own where none is named; or runs the command {@code make-key}. */
@QuarkusMain
public final class Axlecause {

    Axlecause() {}

    public static void main(String... arguments) {
        if (arguments.length > 0 && arguments[0].equals(MakeKeyCommand.NAME)) {
            DatabaseAtHand.forCommand();
            Quarkus.run(MakeKeyCommand.class, arguments);
        } else {
            RequestDeadline.keep();
            DatabaseAtHand.forService();
            Quarkus.run(arguments);
        }
    }
}
