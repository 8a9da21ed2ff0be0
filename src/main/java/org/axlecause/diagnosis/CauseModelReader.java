package org.axlecause.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/** Reads the files of the cause model and refuses what is wrong in them, with file, line and remedy. */
final class CauseModelReader {

    private final Map<String, YamlFile> files = new TreeMap<>();

    final Settings settings;
    final EvidenceReader evidence;
    final CausesReader causes;
    final ChainReader chain;
    final ChecksReader checks;

    CauseModelReader(List<YamlFile> given) {
        given.forEach(file -> files.put(file.stem(), file));
        settings = SettingsReader.of(root("inference"));
        evidence = new EvidenceReader(root("symptoms"), root("findings"));
        causes = new CausesReader(settings, evidence);
        for (YamlFile file : files.values()) {
            if (file.root().isMapping() && file.root().has("causes")) {
                causes.read(file.root());
            }
        }
        causes.checkAllCausesAreThere();
        chain = new ChainReader(root("chain"), evidence, causes.causes);
        checks = new ChecksReader(root("checks"), evidence);
    }

    private YamlNode root(String stem) {
        YamlFile file = files.get(stem);
        if (file == null) {
            throw new IllegalStateException("The cause model lacks the file " + stem + ".yaml; add it to the folder.");
        }
        return file.root();
    }
}
