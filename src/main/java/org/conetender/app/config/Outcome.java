package org.conetender.app.config;

import java.util.List;

/** What reading a configuration came to: all of it, or none of it. */
public sealed interface Outcome {

    /** Worth a look, but no reason to refuse; in order of the file. */
    List<Problem> warnings();

    /**
     * Every check was passed.
     *
     * @param config the checked value
     * @param effective every setting as it counts, in the order of {@link SettingDocs}
     */
    record Accepted(Config config, List<Effective> effective, List<Problem> warnings) implements Outcome {
        public Accepted {
            effective = List.copyOf(effective);
            warnings = List.copyOf(warnings);
        }
    }

    /** Nothing is applied. @param errors at least one, in order of the file */
    record Refused(List<Problem> errors, List<Problem> warnings) implements Outcome {
        public Refused {
            errors = List.copyOf(errors);
            warnings = List.copyOf(warnings);
        }
    }
}
