package org.axlecause;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import org.axlecause.access.MakeKeyCommand;
import org.axlecause.audit.VerifyCommand;
import org.axlecause.fleet.FleetCommand;
import org.axlecause.shared.DatabaseAtHand;
import org.axlecause.shared.RequestDeadline;
import org.axlecause.statistics.RecountCommand;

/** Starts the service, with a database of its own where none is named; or runs one of its commands. */
@QuarkusMain
public final class Axlecause {

    Axlecause() {}

    public static void main(String... arguments) {
        String command = arguments.length == 0 ? "" : arguments[0];
        switch (command) {
            case MakeKeyCommand.NAME -> {
                DatabaseAtHand.forCommand();
                Quarkus.run(MakeKeyCommand.class, arguments);
            }
            case VerifyCommand.NAME -> {
                DatabaseAtHand.forCommand();
                Quarkus.run(VerifyCommand.class, arguments);
            }
            case FleetCommand.NAME -> {
                DatabaseAtHand.forCommand();
                Quarkus.run(FleetCommand.class, arguments);
            }
            case RecountCommand.NAME -> {
                DatabaseAtHand.forCommand();
                Quarkus.run(RecountCommand.class, arguments);
            }
            case DatabaseAtHand.MIGRATE -> {
                DatabaseAtHand.forMigrations();
                Quarkus.run(arguments);
            }
            default -> {
                RequestDeadline.keep();
                DatabaseAtHand.forService();
                Quarkus.run(arguments);
            }
        }
    }
}
