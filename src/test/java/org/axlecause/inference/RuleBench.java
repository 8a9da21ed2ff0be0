package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.axlecause.facts.Conclusion;
import org.drools.model.codegen.ExecutableModelProject;
import org.kie.api.KieBase;
import org.kie.api.KieServices;
import org.kie.api.builder.KieBuilder;
import org.kie.api.builder.KieFileSystem;
import org.kie.api.builder.Message;
import org.kie.api.builder.ReleaseId;

/** Compiles folders or files of the top-level rules folder and runs them over a handful of facts. */
public final class RuleBench {

    /** Else the engine tells each of its steps, which nobody reads and which takes two thirds of the time. */
    private static final Logger ENGINE = Logger.getLogger("org.drools");

    private static final Path RULES = Path.of("rules");
    private static final Map<List<String>, KieBase> COMPILED = new ConcurrentHashMap<>();
    private static final long SHUFFLE_SEED = 20260302L;

    private final RuleBase rules;

    private RuleBench(RuleBase rules) {
        this.rules = rules;
    }

    /** All rules of some layers, such as {@code causes}; compiled once per JVM. */
    public static RuleBench forFolder(String... folders) {
        List<String> files = new ArrayList<>();
        for (String folder : folders) {
            files.addAll(drlFiles(RULES.resolve(folder)));
        }
        return forFiles(files);
    }

    /** One file, such as {@code symptoms/side-balance.drl}. */
    public static RuleBench forFile(String file) {
        return forFiles(List.of(RULES.resolve(file).toString()));
    }

    /** The whole rule base, with no session that has served a case. */
    public static RuleBase all() {
        return forFiles(drlFiles(RULES)).rules;
    }

    /** The whole rule base as the engine holds it. */
    static KieBase engine() {
        all();
        return COMPILED.computeIfAbsent(drlFiles(RULES), RuleBench::compile);
    }

    /** A rule base whose one rule goes on for ever, since each number brings in the next. */
    public static RuleBase endless() {
        return new RuleBase(compiled(Map.of("rules/symptoms/endless.drl", """
                package rules.symptoms

                rule "SYM-999 each number brings in the next"
                  @source(nowhere, none)
                  @reason(it goes on for ever)
                  @since(2026-01-01)
                when
                  $number : Integer( )
                then
                  insert($number + 1);
                end
                """)));
    }

    /** Facts to conclude from. */
    public Given given(Object... facts) {
        return new Given(List.of(facts));
    }

    /** The same facts in several orders must give the same conclusions. */
    public final class Given {

        private final List<Object> facts;

        private Given(List<Object> facts) {
            this.facts = facts;
        }

        /** More facts beside the ones given. */
        public Given and(Object... more) {
            List<Object> all = new ArrayList<>(facts);
            all.addAll(Arrays.asList(more));
            return new Given(all);
        }

        /** The conclusions of one type; refuses a rule base to which the order of facts matters. */
        public <T extends Conclusion> List<T> concluded(Class<T> type) {
            List<T> drawn = rules.conclude(facts).of(type);
            List<Object> shuffled = new ArrayList<>(facts);
            Collections.shuffle(shuffled, new Random(SHUFFLE_SEED));
            assertThat(rules.conclude(shuffled).of(type))
                    .as("conclusions after shuffling the facts with seed %d", SHUFFLE_SEED)
                    .isEqualTo(drawn);
            return drawn;
        }
    }

    /** Asserts that a conclusion names the rule as its ground and shows every one of these words. */
    public static <T extends Conclusion> Consumer<T> shownBy(String rule, String... words) {
        return conclusion -> {
            assertThat(conclusion.because().rule())
                    .as("rule behind %s", conclusion.shown())
                    .isEqualTo(rule);
            String shown = String.join(" | ", conclusion.because().facts());
            for (String word : words) {
                assertThat(shown).as("facts shown for %s", conclusion.shown()).contains(word);
            }
        };
    }

    private static RuleBench forFiles(List<String> files) {
        return new RuleBench(new RuleBase(COMPILED.computeIfAbsent(files, RuleBench::compile)));
    }

    private static List<String> drlFiles(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            List<String> found = files.map(Path::toString)
                    .filter(name -> name.endsWith(".drl"))
                    .sorted()
                    .toList();
            assertThat(found).as("rule files under %s", folder).isNotEmpty();
            return found;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static KieBase compile(List<String> files) {
        Map<String, String> texts = new TreeMap<>();
        for (String file : files) {
            try {
                texts.put(file, Files.readString(Path.of(file)));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return compiled(texts);
    }

    private static KieBase compiled(Map<String, String> texts) {
        ENGINE.setLevel(Level.INFO);
        KieServices services = KieServices.get();
        ReleaseId release = services.newReleaseId("org.axlecause.bench", "rules-" + UUID.randomUUID(), "1");
        KieFileSystem sources = services.newKieFileSystem().generateAndWritePomXML(release);
        texts.forEach((file, text) -> sources.write("src/main/resources/" + file, text));
        KieBuilder builder = services.newKieBuilder(sources).buildAll(ExecutableModelProject.class);
        assertThat(builder.getResults().getMessages(Message.Level.ERROR, Message.Level.WARNING))
                .as("messages of the rule compiler")
                .isEmpty();
        return services.newKieContainer(release).getKieBase();
    }
}
