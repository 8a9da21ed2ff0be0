package org.axlecause.access;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.PrintStream;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The command {@code make-key --tenant CODE --role ROLE}: prints a new key once. */
@Dependent
public class MakeKeyCommand implements QuarkusApplication {

    /** First word of its command line. */
    public static final String NAME = "make-key";

    private static final String USAGE = """
            make-key --tenant CODE --role ROLE [--sites CODE,CODE] [--expires 2027-01-01T00:00:00Z] [--name TEXT]
              CODE  1 to 32 of a-z, 0-9 and hyphens; the tenant is opened when it is new
              ROLE  sender, technician, desk, policy, analyst or admin
            The key is printed once; only its hash is kept.
            """;

    private static final int WRONG_USE = 2;

    private final MakeKey makeKey;
    private final Clock clock;

    MakeKeyCommand(MakeKey makeKey, Clock clock) {
        this.makeKey = makeKey;
        this.clock = clock;
    }

    @Override
    @ActivateRequestContext
    public int run(String... arguments) {
        return run(arguments, System.out, System.err);
    }

    int run(String[] arguments, PrintStream out, PrintStream problems) {
        try {
            Map<String, String> options = options(arguments);
            String tenant = needed(options, "tenant");
            if (!tenant.matches("[a-z0-9][a-z0-9-]{0,31}")) {
                throw new IllegalArgumentException(
                        "--tenant is " + tenant + "; 1 to 32 of a-z, 0-9 and - are expected");
            }
            String roleCode = needed(options, "role");
            Role role = Role.of(roleCode)
                    .orElseThrow(() -> new IllegalArgumentException("--role is " + roleCode + ", which is no role"));
            out.println(makeKey.make(
                    tenant,
                    new KeyTerms(
                            name(options, role), role, sites(options.get("sites")), expiry(options.get("expires"))),
                    NAME));
            return 0;
        } catch (IllegalArgumentException | DateTimeException e) {
            problems.println(e.getMessage());
            problems.print(USAGE);
            return WRONG_USE;
        }
    }

    private static Map<String, String> options(String[] arguments) {
        Map<String, String> options = new TreeMap<>();
        for (int index = 1; index < arguments.length; index += 2) {
            String option = arguments[index];
            if (!List.of("--tenant", "--role", "--sites", "--expires", "--name").contains(option)
                    || index + 1 == arguments.length) {
                throw new IllegalArgumentException(option + " isn't an option with a value");
            }
            options.put(option.substring(2), arguments[index + 1]);
        }
        return options;
    }

    private static String needed(Map<String, String> options, String option) {
        return Optional.ofNullable(options.get(option))
                .orElseThrow(() -> new IllegalArgumentException("--" + option + " is missing"));
    }

    private static @Nullable List<String> sites(@Nullable String text) {
        return text == null ? null : List.of(text.split(",", -1));
    }

    private @Nullable OffsetDateTime expiry(@Nullable String text) {
        if (text == null) {
            return null;
        }
        OffsetDateTime expiry = OffsetDateTime.parse(text);
        if (!expiry.isAfter(OffsetDateTime.now(clock))) {
            throw new IllegalArgumentException("--expires is " + text + ", which is over");
        }
        return expiry;
    }

    private static String name(Map<String, String> options, Role role) {
        return options.getOrDefault("name", role.toString());
    }
}
