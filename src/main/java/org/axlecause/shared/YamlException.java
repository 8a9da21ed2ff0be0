package org.axlecause.shared;

/** A YAML file is wrong: says in which file and line, what is wrong and what to write instead. */
public final class YamlException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    YamlException(String file, int line, String wrong, String remedy) {
        super(file + ":" + line + ": " + wrong + "; " + remedy);
    }
}
