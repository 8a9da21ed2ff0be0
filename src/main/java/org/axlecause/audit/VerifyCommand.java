package org.axlecause.audit;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.Dependent;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** The command {@code verify}: prints what is not as it was written, and ends with 1 where anything is not. */
@Dependent
public class VerifyCommand implements QuarkusApplication {

    /** First word of its command line. */
    public static final String NAME = "verify";

    private static final String USAGE = """
            verify [--tenant CODE] [--heads FILE]
              CODE  one tenant; all of them without it
              FILE  signed heads as they were exported, one JSON object a line; what they name must still be there
            """;

    private static final int BROKEN = 1;
    private static final int WRONG_USE = 2;

    private final AuditStore store;
    private final VerifyChains verifyChains;

    VerifyCommand(AuditStore store, VerifyChains verifyChains) {
        this.store = store;
        this.verifyChains = verifyChains;
    }

    @Override
    public int run(String... arguments) {
        return run(arguments, System.out, System.err);
    }

    int run(String[] arguments, PrintStream out, PrintStream problems) {
        try {
            Map<String, String> options = options(arguments);
            List<SignedHead> heads = heads(options.get("heads"));
            String only = options.get("tenant");
            TreeSet<String> tenants = new TreeSet<>(store.allTenants());
            int broken = 0;
            Map<String, Long> named = new TreeMap<>();
            heads.forEach(head -> named.merge(head.tenant(), head.position(), Math::max));
            for (Map.Entry<String, Long> tenant : named.entrySet()) {
                if (!tenants.contains(tenant.getKey()) && isAskedFor(tenant.getKey(), only)) {
                    out.println(tenant.getKey() + ": the tenant was removed; its chain had come to entry "
                            + tenant.getValue());
                    broken++;
                }
            }
            for (String tenant : tenants) {
                if (isAskedFor(tenant, only)) {
                    broken += verify(tenant, heads, out);
                }
            }
            return broken == 0 ? 0 : BROKEN;
        } catch (IllegalArgumentException | IOException e) {
            problems.println(e.getMessage());
            problems.print(USAGE);
            return WRONG_USE;
        }
    }

    private static boolean isAskedFor(String tenant, @Nullable String only) {
        return only == null || only.equals(tenant);
    }

    private int verify(String tenant, List<SignedHead> heads, PrintStream out) {
        VerifyChains.Verified verified = verifyChains.verify(tenant, heads);
        verified.breaks().forEach(what -> out.println(tenant + ": " + what));
        out.println(tenant + ": " + verified.cases() + " cases, " + verified.events() + " events and "
                + verified.entries() + " audit entries read, "
                + (verified.breaks().isEmpty()
                        ? "all as they were written"
                        : verified.breaks().size() + " breaks found"));
        return verified.breaks().size();
    }

    private static List<SignedHead> heads(@Nullable String file) throws IOException {
        List<SignedHead> heads = new ArrayList<>();
        if (file != null) {
            try {
                for (String line : Files.readAllLines(Path.of(file))) {
                    if (!line.isBlank()) {
                        heads.add(Json.mapper().readValue(line, SignedHead.class));
                    }
                }
            } catch (JsonProcessingException | InvalidPathException e) {
                throw new IllegalArgumentException("--heads is " + file + ", which isn't a file of exported heads", e);
            }
        }
        return heads;
    }

    private static Map<String, String> options(String[] arguments) {
        Map<String, String> options = new TreeMap<>();
        for (int index = 1; index < arguments.length; index += 2) {
            String option = arguments[index];
            if (!List.of("--tenant", "--heads").contains(option) || index + 1 == arguments.length) {
                throw new IllegalArgumentException(option + " isn't an option with a value");
            }
            options.put(option.substring(2), arguments[index + 1]);
        }
        return options;
    }
}
