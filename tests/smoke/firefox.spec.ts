import { openFirefox } from './firefox.ts'
import { smokeTests } from './smoke.ts'

smokeTests(() => openFirefox(process.env['FIREFOX'] ?? 'firefox'))
