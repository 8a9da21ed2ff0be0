package org.axlecause;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import org.axlecause.shared.DatabaseAtHand;

/** Starts the service, with a database of its own where none is named. */
@QuarkusMain
public final class Axlecause {

    private Axlecause() {}

    public static void main(String... arguments) {
        DatabaseAtHand.forService();
        Quarkus.run(arguments);
    }
}
