package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.axlecause.shared.YamlException;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A wrong file of the cause model is refused with file, line and remedy. */
class CauseModelFilesTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        causes/drum-and-disc.yaml | drum-oval: A}                | drum-ovale: A}              | there is no finding 'drum-ovale'
        causes/drum-and-disc.yaml | brakes: [disc-floating, disc-fixed] | brakes: [disc-flying] | 'disc-flying'
        causes/drum-and-disc.yaml | both-sides: 0.2              | both-sides: 1.2             | probability 1.2 is outside 0 to 1
        causes/drum-and-disc.yaml | proved-by: [[drum-scored]]   | proved-by: [[drum-scord]]   | there is no finding or circumstance 'drum-scord'
        causes/drum-and-disc.yaml | proved-by: [[drum-scored]]   | proved-by: []               | nothing proves 'drum-scored'
        causes/wheel-actuation.yaml | shows: {pedal-spongy: B, fluid-low: B} | shows-in-first-run: {pedal-spongy: B} | runs are repeated axle by axle
        findings.yaml             | reported: [stood-for-long]   | recent-work: [shoe-set], reported: [stood-for-long] | is not one of symptom, recent work, report
        inference.yaml            | P: 0.97                      | P: 1.97                     | probability 1.97 is outside 0 to 1
        chain.yaml                | {from: heat, to: drum-oval}  | {from: heat, to: slow-return} | the edges run in a circle
        chain.yaml                | {from: heat, to: drum-oval}  | {from: heat, to: drum-ovel} | there is no cause, state or symptom 'drum-ovel'
        checks.yaml               | {finding: seal-leaking}      | {finding: seal-leeking}     | there is no finding 'seal-leeking'
        """)
    void a_wrong_file_is_refused(String file, String right, String wrong, String says) {
        assertThatThrownBy(() -> CauseModel.of(changed(file, right, wrong)))
                .isInstanceOf(YamlException.class)
                .hasMessageMatching("(?s)rules/cause-model/\\Q" + file + "\\E:[0-9]+: .*; .*")
                .hasMessageContaining(says);
    }

    private static List<YamlFile> changed(String file, String right, String wrong) {
        return YamlFile.inRules("cause-model").stream()
                .flatMap(one -> {
                    if (!one.name().endsWith("cause-model/" + file)) {
                        return Stream.of(one);
                    }
                    if (!one.text().contains(right)) {
                        throw new IllegalArgumentException(file + " does not contain " + right);
                    }
                    return Stream.of(YamlFile.ofText(
                            one.name(),
                            one.text()
                                    .replaceFirst(
                                            java.util.regex.Pattern.quote(right),
                                            java.util.regex.Matcher.quoteReplacement(wrong))));
                })
                .toList();
    }
}
